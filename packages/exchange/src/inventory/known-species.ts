/**
 * Names of trees that are planted along streets, so that misspellings can be told from names. Common botanical knowledge,
 * put together for this purpose; not a flora, and a name that is not in it is no wrong name.
 */
const BY_GENUS = `
Abies alba balsamea concolor fraseri grandis nordmanniana
Acer buergerianum campestre ginnala griseum negundo nigrum palmatum platanoides pseudoplatanus rubrum saccharinum saccharum tataricum truncatum
Aesculus carnea glabra hippocastanum
Agonis flexuosa
Ailanthus altissima
Albizia julibrissin lebbeck
Alnus cordata glutinosa incana rubra
Amelanchier arborea canadensis laevis lamarckii
Angophora costata floribunda
Araucaria araucana columnaris heterophylla
Arbutus unedo
Bauhinia purpurea variegata
Betula alleghaniensis lenta nigra papyrifera pendula populifera pubescens utilis
Brachychiton acerifolius discolor populneus rupestris
Bucida buceras molineti
Bursera simaruba
Callistemon citrinus viminalis
Calodendrum capense
Caragana arborescens
Carpinus betulus caroliniana
Carya illinoinensis ovata
Castanea sativa
Casuarina cunninghamiana equisetifolia glauca obesa
Catalpa bignonioides speciosa
Cedrus atlantica deodara libani
Ceiba speciosa
Celtis australis laevigata occidentalis
Cercidiphyllum japonicum
Cercis canadensis siliquastrum
Chamaecyparis lawsoniana pisifera
Chionanthus retusus virginicus
Cinnamomum camphora
Cladrastis kentukea
Coccoloba diversifolia uvifera
Conocarpus erectus
Cordia sebestena
Cornus florida kousa mas
Corylus avellana colurna
Corymbia calophylla citriodora ficifolia maculata
Crataegus laevigata monogyna phaenopyrum
Cupressus arizonica macrocarpa sempervirens
Delonix regia
Elaeagnus angustifolia
Erythrina crista-galli
Eucalyptus botryoides camaldulensis cladocalyx globulus gomphocephala grandis marginata rudis sideroxylon
Eucommia ulmoides
Fagus grandifolia sylvatica
Ficus altissima aurea benjamina citrifolia elastica macrophylla microcarpa
Fraxinus americana angustifolia excelsior ornus pennsylvanica
Ginkgo biloba
Gleditsia triacanthos
Grevillea robusta
Gymnocladus dioicus
Ilex aquifolium cassine opaca vomitoria
Jacaranda mimosifolia
Juglans nigra regia
Juniperus chinensis communis scopulorum virginiana
Koelreuteria paniculata
Lagerstroemia indica speciosa
Lagunaria patersonia
Larix decidua kaempferi laricina
Ligustrum lucidum
Liquidambar styraciflua
Liriodendron tulipifera
Lophostemon confertus
Lysiloma latisiliquum
Maclura pomifera
Magnolia acuminata grandiflora stellata virginiana
Malus domestica sargentii sylvestris
Mangifera indica
Melaleuca cuticularis lanceolata leucadendra preissiana quinquenervia rhaphiophylla
Melia azedarach
Metasequoia glyptostroboides
Morus alba nigra rubra
Nyssa sylvatica
Olea europaea
Ostrya carpinifolia virginiana
Parrotia persica
Paulownia tomentosa
Peltophorum pterocarpum
Phellodendron amurense
Phoenix canariensis dactylifera roebelenii
Picea abies glauca mariana omorika pungens rubens
Pinus banksiana elliottii halepensis nigra palustris pinea ponderosa resinosa strobus sylvestris taeda thunbergii
Pistacia chinensis
Platanus occidentalis orientalis racemosa
Populus alba deltoides nigra tremula tremuloides
Prunus armeniaca avium cerasifera domestica dulcis padus sargentii serotina serrulata virginiana
Pseudotsuga menziesii
Pterocarya fraxinifolia
Pyrus calleryana communis ussuriensis
Quercus acutissima agrifolia alba bicolor cerris coccinea ilex imbricaria laurifolia lobata macrocarpa muehlenbergii nigra palustris petraea phellos robur rubra shumardii suber virginiana
Rhus typhina
Robinia pseudoacacia
Roystonea regia
Sabal palmetto
Salix alba babylonica caprea fragilis matsudana nigra
Sapium sebiferum
Schinus molle terebinthifolia terebinthifolius
Sophora japonica
Sorbus americana aria aucuparia intermedia
Spathodea campanulata
Styphnolobium japonicum
Swietenia mahagoni
Syagrus romanzoffiana
Syringa reticulata vulgaris
Syzygium cumini paniculatum
Tabebuia aurea heterophylla rosea
Tamarindus indica
Taxodium distichum
Taxus baccata cuspidata
Terminalia buceras catappa
Thuja occidentalis plicata
Tilia americana cordata euchlora henryana platyphyllos tomentosa
Tipuana tipu
Triadica sebifera
Tristaniopsis laurina
Tsuga canadensis heterophylla
Ulmus alata americana carpinifolia crassifolia glabra parvifolia pumila
Washingtonia filifera robusta
Zelkova serrata
`;

/** Names for crosses, which are written with an x before the epithet. */
const CROSSES = `Acer freemanii; Aesculus carnea; Crataegus lavalleei; Magnolia soulangeana; Platanus acerifolia; Platanus hispanica;
Prunus yedoensis; Salix sepulcralis; Tilia europaea; Ulmus hollandica; Erythrina sykesii`;

/** Genera whose crown does not grow with their trunk. */
export const PALMS: ReadonlySet<string> = new Set(
  (
    'Adonidia Archontophoenix Bismarckia Borassus Butia Caryota Chamaerops Cocos Dypsis Hyophorbe Jubaea Livistona Phoenix ' +
    'Ptychosperma Ravenea Roystonea Sabal Syagrus Thrinax Trachycarpus Veitchia Washingtonia Wodyetia'
  ).split(' '),
);

export const CONIFERS: ReadonlySet<string> = new Set(
  (
    'Abies Araucaria Cedrus Chamaecyparis Cryptomeria Cupressus Juniperus Larix Metasequoia Picea Pinus Podocarpus ' +
    'Pseudotsuga Sequoia Sequoiadendron Taxodium Taxus Thuja Tsuga'
  ).split(' '),
);

/** Epithets of each known genus; crosses among them. */
export function knownEpithets(): Map<string, Set<string>> {
  const known = new Map<string, Set<string>>();
  for (const line of BY_GENUS.trim().split('\n')) {
    const [genus, ...epithets] = line.split(' ');
    known.set(genus, new Set(epithets));
  }
  for (const cross of CROSSES.split(/;\s*/)) {
    const [genus, epithet] = cross.split(' ');
    known.set(genus, (known.get(genus) ?? new Set()).add(epithet));
  }
  for (const genus of [...PALMS, ...CONIFERS]) if (!known.has(genus)) known.set(genus, new Set());
  return known;
}
