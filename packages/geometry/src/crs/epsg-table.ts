// Made by scripts/make-crs-table.py; do not edit by hand. Source: EPSG Dataset v10.076 (2022-08-31),
// © IOGP, as carried by PROJ 9.1.1 (proj.db). Parameters are PROJ's, without the
// leading plus, on GRS 80 unless they say otherwise; `=code` means the parameters of that system.

/** `@datum` opens a group; then `code|name|parameters`. No shift: these datums lie within about two metres of WGS 84. */
export const SAME_AS_WGS84 = `
@North American Datum 1983
2205|NAD83 / Kentucky North|proj=lcc lat_0=37.5 lon_0=-84.25 lat_1=37.9666666666667 lat_2=38.9666666666667 x_0=500000 y_0=0
2222|NAD83 / Arizona East (ft)|proj=tmerc lat_0=31 lon_0=-110.166666666667 k=0.9999 x_0=213360 y_0=0 units=ft
2223|NAD83 / Arizona Central (ft)|proj=tmerc lat_0=31 lon_0=-111.916666666667 k=0.9999 x_0=213360 y_0=0 units=ft
2224|NAD83 / Arizona West (ft)|proj=tmerc lat_0=31 lon_0=-113.75 k=0.999933333 x_0=213360 y_0=0 units=ft
2225|NAD83 / California zone 1 (ftUS)|proj=lcc lat_0=39.3333333333333 lon_0=-122 lat_1=41.6666666666667 lat_2=40 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2226|NAD83 / California zone 2 (ftUS)|proj=lcc lat_0=37.6666666666667 lon_0=-122 lat_1=39.8333333333333 lat_2=38.3333333333333 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2227|NAD83 / California zone 3 (ftUS)|proj=lcc lat_0=36.5 lon_0=-120.5 lat_1=38.4333333333333 lat_2=37.0666666666667 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2228|NAD83 / California zone 4 (ftUS)|proj=lcc lat_0=35.3333333333333 lon_0=-119 lat_1=37.25 lat_2=36 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2229|NAD83 / California zone 5 (ftUS)|proj=lcc lat_0=33.5 lon_0=-118 lat_1=35.4666666666667 lat_2=34.0333333333333 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2230|NAD83 / California zone 6 (ftUS)|proj=lcc lat_0=32.1666666666667 lon_0=-116.25 lat_1=33.8833333333333 lat_2=32.7833333333333 x_0=2000000.0001016 y_0=500000.0001016 units=us-ft
2231|NAD83 / Colorado North (ftUS)|proj=lcc lat_0=39.3333333333333 lon_0=-105.5 lat_1=40.7833333333333 lat_2=39.7166666666667 x_0=914401.828803658 y_0=304800.609601219 units=us-ft
2232|NAD83 / Colorado Central (ftUS)|proj=lcc lat_0=37.8333333333333 lon_0=-105.5 lat_1=39.75 lat_2=38.45 x_0=914401.828803658 y_0=304800.609601219 units=us-ft
2233|NAD83 / Colorado South (ftUS)|proj=lcc lat_0=36.6666666666667 lon_0=-105.5 lat_1=38.4333333333333 lat_2=37.2333333333333 x_0=914401.828803658 y_0=304800.609601219 units=us-ft
2234|NAD83 / Connecticut (ftUS)|proj=lcc lat_0=40.8333333333333 lon_0=-72.75 lat_1=41.8666666666667 lat_2=41.2 x_0=304800.609601219 y_0=152400.30480061 units=us-ft
2235|NAD83 / Delaware (ftUS)|proj=tmerc lat_0=38 lon_0=-75.4166666666667 k=0.999995 x_0=200000.0001016 y_0=0 units=us-ft
2236|NAD83 / Florida East (ftUS)|proj=tmerc lat_0=24.3333333333333 lon_0=-81 k=0.999941177 x_0=200000.0001016 y_0=0 units=us-ft
2237|NAD83 / Florida West (ftUS)|proj=tmerc lat_0=24.3333333333333 lon_0=-82 k=0.999941177 x_0=200000.0001016 y_0=0 units=us-ft
2238|NAD83 / Florida North (ftUS)|proj=lcc lat_0=29 lon_0=-84.5 lat_1=30.75 lat_2=29.5833333333333 x_0=600000 y_0=0 units=us-ft
2239|NAD83 / Georgia East (ftUS)|proj=tmerc lat_0=30 lon_0=-82.1666666666667 k=0.9999 x_0=200000.0001016 y_0=0 units=us-ft
2240|NAD83 / Georgia West (ftUS)|proj=tmerc lat_0=30 lon_0=-84.1666666666667 k=0.9999 x_0=699999.9998984 y_0=0 units=us-ft
2241|NAD83 / Idaho East (ftUS)|proj=tmerc lat_0=41.6666666666667 lon_0=-112.166666666667 k=0.999947368 x_0=200000.0001016 y_0=0 units=us-ft
2242|NAD83 / Idaho Central (ftUS)|proj=tmerc lat_0=41.6666666666667 lon_0=-114 k=0.999947368 x_0=500000.0001016 y_0=0 units=us-ft
2243|NAD83 / Idaho West (ftUS)|proj=tmerc lat_0=41.6666666666667 lon_0=-115.75 k=0.999933333 x_0=800000.0001016 y_0=0 units=us-ft
2246|NAD83 / Kentucky North (ftUS)|proj=lcc lat_0=37.5 lon_0=-84.25 lat_1=37.9666666666667 lat_2=38.9666666666667 x_0=500000.0001016 y_0=0 units=us-ft
2247|NAD83 / Kentucky South (ftUS)|proj=lcc lat_0=36.3333333333333 lon_0=-85.75 lat_1=37.9333333333333 lat_2=36.7333333333333 x_0=500000.0001016 y_0=500000.0001016 units=us-ft
2248|NAD83 / Maryland (ftUS)|proj=lcc lat_0=37.6666666666667 lon_0=-77 lat_1=39.45 lat_2=38.3 x_0=399999.9998984 y_0=0 units=us-ft
2249|NAD83 / Massachusetts Mainland (ftUS)|proj=lcc lat_0=41 lon_0=-71.5 lat_1=42.6833333333333 lat_2=41.7166666666667 x_0=200000.0001016 y_0=750000 units=us-ft
2250|NAD83 / Massachusetts Island (ftUS)|proj=lcc lat_0=41 lon_0=-70.5 lat_1=41.4833333333333 lat_2=41.2833333333333 x_0=500000.0001016 y_0=0 units=us-ft
2251|NAD83 / Michigan North (ft)|proj=lcc lat_0=44.7833333333333 lon_0=-87 lat_1=47.0833333333333 lat_2=45.4833333333333 x_0=7999999.999968 y_0=0 units=ft
2252|NAD83 / Michigan Central (ft)|proj=lcc lat_0=43.3166666666667 lon_0=-84.3666666666667 lat_1=45.7 lat_2=44.1833333333333 x_0=5999999.999976 y_0=0 units=ft
2253|NAD83 / Michigan South (ft)|proj=lcc lat_0=41.5 lon_0=-84.3666666666667 lat_1=43.6666666666667 lat_2=42.1 x_0=3999999.999984 y_0=0 units=ft
2254|NAD83 / Mississippi East (ftUS)|proj=tmerc lat_0=29.5 lon_0=-88.8333333333333 k=0.99995 x_0=300000 y_0=0 units=us-ft
2255|NAD83 / Mississippi West (ftUS)|proj=tmerc lat_0=29.5 lon_0=-90.3333333333333 k=0.99995 x_0=699999.9998984 y_0=0 units=us-ft
2256|NAD83 / Montana (ft)|proj=lcc lat_0=44.25 lon_0=-109.5 lat_1=49 lat_2=45 x_0=599999.9999976 y_0=0 units=ft
2257|NAD83 / New Mexico East (ftUS)|proj=tmerc lat_0=31 lon_0=-104.333333333333 k=0.999909091 x_0=165000 y_0=0 units=us-ft
2258|NAD83 / New Mexico Central (ftUS)|proj=tmerc lat_0=31 lon_0=-106.25 k=0.9999 x_0=500000.0001016 y_0=0 units=us-ft
2259|NAD83 / New Mexico West (ftUS)|proj=tmerc lat_0=31 lon_0=-107.833333333333 k=0.999916667 x_0=830000.0001016 y_0=0 units=us-ft
2260|NAD83 / New York East (ftUS)|proj=tmerc lat_0=38.8333333333333 lon_0=-74.5 k=0.9999 x_0=150000 y_0=0 units=us-ft
2261|NAD83 / New York Central (ftUS)|proj=tmerc lat_0=40 lon_0=-76.5833333333333 k=0.9999375 x_0=249999.9998984 y_0=0 units=us-ft
2262|NAD83 / New York West (ftUS)|proj=tmerc lat_0=40 lon_0=-78.5833333333333 k=0.9999375 x_0=350000.0001016 y_0=0 units=us-ft
2263|NAD83 / New York Long Island (ftUS)|proj=lcc lat_0=40.1666666666667 lon_0=-74 lat_1=41.0333333333333 lat_2=40.6666666666667 x_0=300000 y_0=0 units=us-ft
2264|NAD83 / North Carolina (ftUS)|proj=lcc lat_0=33.75 lon_0=-79 lat_1=36.1666666666667 lat_2=34.3333333333333 x_0=609601.219202438 y_0=0 units=us-ft
2265|NAD83 / North Dakota North (ft)|proj=lcc lat_0=47 lon_0=-100.5 lat_1=48.7333333333333 lat_2=47.4333333333333 x_0=599999.9999976 y_0=0 units=ft
2266|NAD83 / North Dakota South (ft)|proj=lcc lat_0=45.6666666666667 lon_0=-100.5 lat_1=47.4833333333333 lat_2=46.1833333333333 x_0=599999.9999976 y_0=0 units=ft
2267|NAD83 / Oklahoma North (ftUS)|proj=lcc lat_0=35 lon_0=-98 lat_1=36.7666666666667 lat_2=35.5666666666667 x_0=600000 y_0=0 units=us-ft
2268|NAD83 / Oklahoma South (ftUS)|proj=lcc lat_0=33.3333333333333 lon_0=-98 lat_1=35.2333333333333 lat_2=33.9333333333333 x_0=600000 y_0=0 units=us-ft
2269|NAD83 / Oregon North (ft)|proj=lcc lat_0=43.6666666666667 lon_0=-120.5 lat_1=46 lat_2=44.3333333333333 x_0=2500000.0001424 y_0=0 units=ft
2270|NAD83 / Oregon South (ft)|proj=lcc lat_0=41.6666666666667 lon_0=-120.5 lat_1=44 lat_2=42.3333333333333 x_0=1500000.0001464 y_0=0 units=ft
2271|NAD83 / Pennsylvania North (ftUS)|proj=lcc lat_0=40.1666666666667 lon_0=-77.75 lat_1=41.95 lat_2=40.8833333333333 x_0=600000 y_0=0 units=us-ft
2272|NAD83 / Pennsylvania South (ftUS)|proj=lcc lat_0=39.3333333333333 lon_0=-77.75 lat_1=40.9666666666667 lat_2=39.9333333333333 x_0=600000 y_0=0 units=us-ft
2273|NAD83 / South Carolina (ft)|proj=lcc lat_0=31.8333333333333 lon_0=-81 lat_1=34.8333333333333 lat_2=32.5 x_0=609600 y_0=0 units=ft
2274|NAD83 / Tennessee (ftUS)|proj=lcc lat_0=34.3333333333333 lon_0=-86 lat_1=36.4166666666667 lat_2=35.25 x_0=600000 y_0=0 units=us-ft
2275|NAD83 / Texas North (ftUS)|proj=lcc lat_0=34 lon_0=-101.5 lat_1=36.1833333333333 lat_2=34.65 x_0=200000.0001016 y_0=999999.9998984 units=us-ft
2276|NAD83 / Texas North Central (ftUS)|proj=lcc lat_0=31.6666666666667 lon_0=-98.5 lat_1=33.9666666666667 lat_2=32.1333333333333 x_0=600000 y_0=2000000.0001016 units=us-ft
2277|NAD83 / Texas Central (ftUS)|proj=lcc lat_0=29.6666666666667 lon_0=-100.333333333333 lat_1=31.8833333333333 lat_2=30.1166666666667 x_0=699999.9998984 y_0=3000000 units=us-ft
2278|NAD83 / Texas South Central (ftUS)|proj=lcc lat_0=27.8333333333333 lon_0=-99 lat_1=30.2833333333333 lat_2=28.3833333333333 x_0=600000 y_0=3999999.9998984 units=us-ft
2279|NAD83 / Texas South (ftUS)|proj=lcc lat_0=25.6666666666667 lon_0=-98.5 lat_1=27.8333333333333 lat_2=26.1666666666667 x_0=300000 y_0=5000000.0001016 units=us-ft
2280|NAD83 / Utah North (ft)|proj=lcc lat_0=40.3333333333333 lon_0=-111.5 lat_1=41.7833333333333 lat_2=40.7166666666667 x_0=500000.0001504 y_0=999999.999996 units=ft
2281|NAD83 / Utah Central (ft)|proj=lcc lat_0=38.3333333333333 lon_0=-111.5 lat_1=40.65 lat_2=39.0166666666667 x_0=500000.0001504 y_0=1999999.999992 units=ft
2282|NAD83 / Utah South (ft)|proj=lcc lat_0=36.6666666666667 lon_0=-111.5 lat_1=38.35 lat_2=37.2166666666667 x_0=500000.0001504 y_0=2999999.999988 units=ft
2283|NAD83 / Virginia North (ftUS)|proj=lcc lat_0=37.6666666666667 lon_0=-78.5 lat_1=39.2 lat_2=38.0333333333333 x_0=3500000.0001016 y_0=2000000.0001016 units=us-ft
2284|NAD83 / Virginia South (ftUS)|proj=lcc lat_0=36.3333333333333 lon_0=-78.5 lat_1=37.9666666666667 lat_2=36.7666666666667 x_0=3500000.0001016 y_0=999999.9998984 units=us-ft
2285|NAD83 / Washington North (ftUS)|proj=lcc lat_0=47 lon_0=-120.833333333333 lat_1=48.7333333333333 lat_2=47.5 x_0=500000.0001016 y_0=0 units=us-ft
2286|NAD83 / Washington South (ftUS)|proj=lcc lat_0=45.3333333333333 lon_0=-120.5 lat_1=47.3333333333333 lat_2=45.8333333333333 x_0=500000.0001016 y_0=0 units=us-ft
2287|NAD83 / Wisconsin North (ftUS)|proj=lcc lat_0=45.1666666666667 lon_0=-90 lat_1=46.7666666666667 lat_2=45.5666666666667 x_0=600000 y_0=0 units=us-ft
2288|NAD83 / Wisconsin Central (ftUS)|proj=lcc lat_0=43.8333333333333 lon_0=-90 lat_1=45.5 lat_2=44.25 x_0=600000 y_0=0 units=us-ft
2289|NAD83 / Wisconsin South (ftUS)|proj=lcc lat_0=42 lon_0=-90 lat_1=44.0666666666667 lat_2=42.7333333333333 x_0=600000 y_0=0 units=us-ft
2965|NAD83 / Indiana East (ftUS)|proj=tmerc lat_0=37.5 lon_0=-85.6666666666667 k=0.999966667 x_0=99999.9998983998 y_0=249999.9998984 units=us-ft
2966|NAD83 / Indiana West (ftUS)|proj=tmerc lat_0=37.5 lon_0=-87.0833333333333 k=0.999966667 x_0=900000 y_0=249999.9998984 units=us-ft
2991|NAD83 / Oregon LCC (m)|proj=lcc lat_0=41.75 lon_0=-120.5 lat_1=43 lat_2=45.5 x_0=400000 y_0=0
2992|NAD83 / Oregon GIC Lambert (ft)|proj=lcc lat_0=41.75 lon_0=-120.5 lat_1=43 lat_2=45.5 x_0=399999.9999984 y_0=0 units=ft
3005|NAD83 / BC Albers|proj=aea lat_0=45 lon_0=-126 lat_1=50 lat_2=58.5 x_0=1000000 y_0=0
3070|NAD83 / Wisconsin Transverse Mercator|proj=tmerc lat_0=0 lon_0=-90 k=0.9996 x_0=520000 y_0=-4480000
3072|NAD83 / Maine CS2000 East|proj=tmerc lat_0=43.8333333333333 lon_0=-67.875 k=0.99998 x_0=700000 y_0=0
3074|NAD83 / Maine CS2000 West|proj=tmerc lat_0=42.8333333333333 lon_0=-70.375 k=0.99998 x_0=300000 y_0=0
3078|NAD83 / Michigan Oblique Mercator|proj=omerc no_uoff lat_0=45.3091666666667 lonc=-86 alpha=337.25556 gamma=337.25556 k=0.9996 x_0=2546731.496 y_0=-4354009.816
3081|NAD83 / Texas State Mapping System|proj=lcc lat_0=31.1666666666667 lon_0=-100 lat_1=27.4166666666667 lat_2=34.9166666666667 x_0=1000000 y_0=1000000
3082|NAD83 / Texas Centric Lambert Conformal|proj=lcc lat_0=18 lon_0=-100 lat_1=27.5 lat_2=35 x_0=1500000 y_0=5000000
3083|NAD83 / Texas Centric Albers Equal Area|proj=aea lat_0=18 lon_0=-100 lat_1=27.5 lat_2=35 x_0=1500000 y_0=6000000
3086|NAD83 / Florida GDL Albers|proj=aea lat_0=24 lon_0=-84 lat_1=24 lat_2=31.5 x_0=400000 y_0=0
3088|NAD83 / Kentucky Single Zone|proj=lcc lat_0=36.3333333333333 lon_0=-85.75 lat_1=37.0833333333333 lat_2=38.6666666666667 x_0=1500000 y_0=1000000
3089|NAD83 / Kentucky Single Zone (ftUS)|proj=lcc lat_0=36.3333333333333 lon_0=-85.75 lat_1=37.0833333333333 lat_2=38.6666666666667 x_0=1500000 y_0=999999.9998984 units=us-ft
3161|NAD83 / Ontario MNR Lambert|proj=lcc lat_0=0 lon_0=-85 lat_1=44.5 lat_2=53.5 x_0=930000 y_0=6430000
3174|NAD83 / Great Lakes Albers|proj=aea lat_0=45.568977 lon_0=-84.455955 lat_1=42.122774 lat_2=49.01518 x_0=1000000 y_0=1000000
3175|NAD83 / Great Lakes and St Lawrence Albers|proj=aea lat_0=45.568977 lon_0=-83.248627 lat_1=42.122774 lat_2=49.01518 x_0=1000000 y_0=1000000
3310|NAD83 / California Albers|proj=aea lat_0=0 lon_0=-120 lat_1=34 lat_2=40.5 x_0=0 y_0=-4000000
3338|NAD83 / Alaska Albers|proj=aea lat_0=50 lon_0=-154 lat_1=55 lat_2=65 x_0=0 y_0=0
3347|NAD83 / Statistics Canada Lambert|proj=lcc lat_0=63.390675 lon_0=-91.8666666666667 lat_1=49 lat_2=77 x_0=6200000 y_0=3000000
3372|NAD83 / UTM zone 59N|proj=utm zone=59
3373|NAD83 / UTM zone 60N|proj=utm zone=60
3400|NAD83 / Alberta 10-TM (Forest)|proj=tmerc lat_0=0 lon_0=-115 k=0.9992 x_0=500000 y_0=0
3401|NAD83 / Alberta 10-TM (Resource)|proj=tmerc lat_0=0 lon_0=-115 k=0.9992 x_0=0 y_0=0
3417|NAD83 / Iowa North (ftUS)|proj=lcc lat_0=41.5 lon_0=-93.5 lat_1=43.2666666666667 lat_2=42.0666666666667 x_0=1500000 y_0=999999.99998984 units=us-ft
3418|NAD83 / Iowa South (ftUS)|proj=lcc lat_0=40 lon_0=-93.5 lat_1=41.7833333333333 lat_2=40.6166666666667 x_0=500000.00001016 y_0=0 units=us-ft
3419|NAD83 / Kansas North (ftUS)|proj=lcc lat_0=38.3333333333333 lon_0=-98 lat_1=39.7833333333333 lat_2=38.7166666666667 x_0=399999.99998984 y_0=0 units=us-ft
3420|NAD83 / Kansas South (ftUS)|proj=lcc lat_0=36.6666666666667 lon_0=-98.5 lat_1=38.5666666666667 lat_2=37.2666666666667 x_0=399999.99998984 y_0=399999.99998984 units=us-ft
3421|NAD83 / Nevada East (ftUS)|proj=tmerc lat_0=34.75 lon_0=-115.583333333333 k=0.9999 x_0=200000.00001016 y_0=8000000.00001016 units=us-ft
3422|NAD83 / Nevada Central (ftUS)|proj=tmerc lat_0=34.75 lon_0=-116.666666666667 k=0.9999 x_0=500000.00001016 y_0=6000000 units=us-ft
3423|NAD83 / Nevada West (ftUS)|proj=tmerc lat_0=34.75 lon_0=-118.583333333333 k=0.9999 x_0=800000.00001016 y_0=3999999.99998984 units=us-ft
3424|NAD83 / New Jersey (ftUS)|=2260
3433|NAD83 / Arkansas North (ftUS)|proj=lcc lat_0=34.3333333333333 lon_0=-92 lat_1=36.2333333333333 lat_2=34.9333333333333 x_0=399999.99998984 y_0=0 units=us-ft
3434|NAD83 / Arkansas South (ftUS)|proj=lcc lat_0=32.6666666666667 lon_0=-92 lat_1=34.7666666666667 lat_2=33.3 x_0=399999.99998984 y_0=399999.99998984 units=us-ft
3435|NAD83 / Illinois East (ftUS)|proj=tmerc lat_0=36.6666666666667 lon_0=-88.3333333333333 k=0.999975 x_0=300000 y_0=0 units=us-ft
3436|NAD83 / Illinois West (ftUS)|proj=tmerc lat_0=36.6666666666667 lon_0=-90.1666666666667 k=0.999941177 x_0=699999.99998984 y_0=0 units=us-ft
3437|NAD83 / New Hampshire (ftUS)|proj=tmerc lat_0=42.5 lon_0=-71.6666666666667 k=0.999966667 x_0=300000 y_0=0 units=us-ft
3438|NAD83 / Rhode Island (ftUS)|proj=tmerc lat_0=41.0833333333333 lon_0=-71.5 k=0.99999375 x_0=99999.99998984 y_0=0 units=us-ft
3451|NAD83 / Louisiana North (ftUS)|proj=lcc lat_0=30.5 lon_0=-92.5 lat_1=32.6666666666667 lat_2=31.1666666666667 x_0=999999.99998984 y_0=0 units=us-ft
3452|NAD83 / Louisiana South (ftUS)|proj=lcc lat_0=28.5 lon_0=-91.3333333333333 lat_1=30.7 lat_2=29.3 x_0=999999.99998984 y_0=0 units=us-ft
3453|NAD83 / Louisiana Offshore (ftUS)|proj=lcc lat_0=25.5 lon_0=-91.3333333333333 lat_1=27.8333333333333 lat_2=26.1666666666667 x_0=999999.99998984 y_0=0 units=us-ft
3455|NAD83 / South Dakota South (ftUS)|proj=lcc lat_0=42.3333333333333 lon_0=-100.333333333333 lat_1=44.4 lat_2=42.8333333333333 x_0=600000 y_0=0 units=us-ft
3463|NAD83 / Maine CS2000 Central|proj=tmerc lat_0=43.5 lon_0=-69.125 k=0.99998 x_0=500000 y_0=0
3560|NAD83 / Utah North (ftUS)|proj=lcc lat_0=40.3333333333333 lon_0=-111.5 lat_1=41.7833333333333 lat_2=40.7166666666667 x_0=500000.00001016 y_0=999999.99998984 units=us-ft
3566|NAD83 / Utah Central (ftUS)|proj=lcc lat_0=38.3333333333333 lon_0=-111.5 lat_1=40.65 lat_2=39.0166666666667 x_0=500000.00001016 y_0=2000000.00001016 units=us-ft
3567|NAD83 / Utah South (ftUS)|proj=lcc lat_0=36.6666666666667 lon_0=-111.5 lat_1=38.35 lat_2=37.2166666666667 x_0=500000.00001016 y_0=3000000 units=us-ft
3578|NAD83 / Yukon Albers|proj=aea lat_0=59 lon_0=-132.5 lat_1=61.6666666666667 lat_2=68 x_0=500000 y_0=500000
3580|NAD83 / NWT Lambert|proj=lcc lat_0=0 lon_0=-112 lat_1=62 lat_2=70 x_0=0 y_0=0
3734|NAD83 / Ohio North (ftUS)|proj=lcc lat_0=39.6666666666667 lon_0=-82.5 lat_1=41.7 lat_2=40.4333333333333 x_0=600000 y_0=0 units=us-ft
3735|NAD83 / Ohio South (ftUS)|proj=lcc lat_0=38 lon_0=-82.5 lat_1=40.0333333333333 lat_2=38.7333333333333 x_0=600000 y_0=0 units=us-ft
3736|NAD83 / Wyoming East (ftUS)|proj=tmerc lat_0=40.5 lon_0=-105.166666666667 k=0.9999375 x_0=200000.00001016 y_0=0 units=us-ft
3737|NAD83 / Wyoming East Central (ftUS)|proj=tmerc lat_0=40.5 lon_0=-107.333333333333 k=0.9999375 x_0=399999.99998984 y_0=99999.99998984 units=us-ft
3738|NAD83 / Wyoming West Central (ftUS)|proj=tmerc lat_0=40.5 lon_0=-108.75 k=0.9999375 x_0=600000 y_0=0 units=us-ft
3739|NAD83 / Wyoming West (ftUS)|proj=tmerc lat_0=40.5 lon_0=-110.083333333333 k=0.9999375 x_0=800000.00001016 y_0=99999.99998984 units=us-ft
3759|NAD83 / Hawaii zone 3 (ftUS)|proj=tmerc lat_0=21.1666666666667 lon_0=-158 k=0.99999 x_0=500000.00001016 y_0=0 units=us-ft
3775|NAD83 / Alberta 3TM ref merid 111 W|proj=tmerc lat_0=0 lon_0=-111 k=0.9999 x_0=0 y_0=0
3776|NAD83 / Alberta 3TM ref merid 114 W|proj=tmerc lat_0=0 lon_0=-114 k=0.9999 x_0=0 y_0=0
3777|NAD83 / Alberta 3TM ref merid 117 W|proj=tmerc lat_0=0 lon_0=-117 k=0.9999 x_0=0 y_0=0
3798|NAD83 / MTQ Lambert|proj=lcc lat_0=44 lon_0=-70 lat_1=50 lat_2=46 x_0=800000 y_0=0
3801|NAD83 / Alberta 3TM ref merid 120 W|proj=tmerc lat_0=0 lon_0=-120 k=0.9999 x_0=0 y_0=0
3814|NAD83 / Mississippi TM|proj=tmerc lat_0=32.5 lon_0=-89.75 k=0.9998335 x_0=500000 y_0=1300000
3968|NAD83 / Virginia Lambert|proj=lcc lat_0=36 lon_0=-79.5 lat_1=37 lat_2=39.5 x_0=0 y_0=0
3978|NAD83 / Canada Atlas Lambert|proj=lcc lat_0=49 lon_0=-95 lat_1=49 lat_2=77 x_0=0 y_0=0
4217|NAD83 / BLM 59N (ftUS)|proj=tmerc lat_0=0 lon_0=171 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4269|NAD83|proj=longlat
4420|NAD83 / BLM 60N (ftUS)|proj=tmerc lat_0=0 lon_0=177 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4421|NAD83 / BLM 1N (ftUS)|proj=tmerc lat_0=0 lon_0=-177 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4422|NAD83 / BLM 2N (ftUS)|proj=tmerc lat_0=0 lon_0=-171 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4423|NAD83 / BLM 3N (ftUS)|proj=tmerc lat_0=0 lon_0=-165 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4424|NAD83 / BLM 4N (ftUS)|proj=tmerc lat_0=0 lon_0=-159 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4425|NAD83 / BLM 5N (ftUS)|proj=tmerc lat_0=0 lon_0=-153 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4426|NAD83 / BLM 6N (ftUS)|proj=tmerc lat_0=0 lon_0=-147 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4427|NAD83 / BLM 7N (ftUS)|proj=tmerc lat_0=0 lon_0=-141 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4428|NAD83 / BLM 8N (ftUS)|proj=tmerc lat_0=0 lon_0=-135 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4429|NAD83 / BLM 9N (ftUS)|proj=tmerc lat_0=0 lon_0=-129 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4430|NAD83 / BLM 10N (ftUS)|proj=tmerc lat_0=0 lon_0=-123 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4431|NAD83 / BLM 11N (ftUS)|proj=tmerc lat_0=0 lon_0=-117 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4432|NAD83 / BLM 12N (ftUS)|proj=tmerc lat_0=0 lon_0=-111 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4433|NAD83 / BLM 13N (ftUS)|proj=tmerc lat_0=0 lon_0=-105 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4438|NAD83 / BLM 18N (ftUS)|proj=tmerc lat_0=0 lon_0=-75 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4439|NAD83 / BLM 19N (ftUS)|proj=tmerc lat_0=0 lon_0=-69 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
4457|NAD83 / South Dakota North (ftUS)|proj=lcc lat_0=43.8333333333333 lon_0=-100 lat_1=45.6833333333333 lat_2=44.4166666666667 x_0=600000 y_0=0 units=us-ft
5070|NAD83 / Conus Albers|proj=aea lat_0=23 lon_0=-96 lat_1=29.5 lat_2=45.5 x_0=0 y_0=0
5320|NAD83 / Teranet Ontario Lambert|proj=lcc lat_0=0 lon_0=-84 lat_1=44.5 lat_2=54.5 x_0=1000000 y_0=0
5646|NAD83 / Vermont (ftUS)|proj=tmerc lat_0=42.5 lon_0=-72.5 k=0.999964286 x_0=500000.00001016 y_0=0 units=us-ft
6623|NAD83 / Quebec Albers|proj=aea lat_0=44 lon_0=-68.5 lat_1=60 lat_2=46 x_0=0 y_0=0
6922|NAD83 / Kansas LCC|proj=lcc lat_0=36 lon_0=-98.25 lat_1=39.5 lat_2=37.5 x_0=400000 y_0=0
6923|NAD83 / Kansas LCC (ftUS)|proj=lcc lat_0=36 lon_0=-98.25 lat_1=39.5 lat_2=37.5 x_0=399999.99998984 y_0=0 units=us-ft
8379|NAD83 / NCRS Las Vegas (m)|proj=tmerc lat_0=36.25 lon_0=-114.966666666667 k=1.0001 x_0=100000 y_0=200000
8380|NAD83 / NCRS Las Vegas (ftUS)|proj=tmerc lat_0=36.25 lon_0=-114.966666666667 k=1.0001 x_0=99999.99998984 y_0=200000.00001016 units=us-ft
8381|NAD83 / NCRS Las Vegas high (m)|proj=tmerc lat_0=36.25 lon_0=-114.966666666667 k=1.000135 x_0=300000 y_0=400000
8382|NAD83 / NCRS Las Vegas high (ftUS)|proj=tmerc lat_0=36.25 lon_0=-114.966666666667 k=1.000135 x_0=300000 y_0=399999.99998984 units=us-ft
8826|NAD83 / Idaho Transverse Mercator|proj=tmerc lat_0=42 lon_0=-114 k=0.9996 x_0=2500000 y_0=1200000
9674|NAD83 / USFS R6 Albers|proj=aea lat_0=34 lon_0=-120 lat_1=43 lat_2=48 x_0=600000 y_0=0
9712|NAD83 / UTM zone 24N|proj=utm zone=24
26847|NAD83 / Maine East (ftUS)|proj=tmerc lat_0=43.6666666666667 lon_0=-68.5 k=0.9999 x_0=300000 y_0=0 units=us-ft
26848|NAD83 / Maine West (ftUS)|proj=tmerc lat_0=42.8333333333333 lon_0=-70.1666666666667 k=0.999966667 x_0=900000 y_0=0 units=us-ft
26849|NAD83 / Minnesota North (ftUS)|proj=lcc lat_0=46.5 lon_0=-93.1 lat_1=48.6333333333333 lat_2=47.0333333333333 x_0=800000.00001016 y_0=99999.99998984 units=us-ft
26850|NAD83 / Minnesota Central (ftUS)|proj=lcc lat_0=45 lon_0=-94.25 lat_1=47.05 lat_2=45.6166666666667 x_0=800000.00001016 y_0=99999.99998984 units=us-ft
26851|NAD83 / Minnesota South (ftUS)|proj=lcc lat_0=43 lon_0=-94 lat_1=45.2166666666667 lat_2=43.7833333333333 x_0=800000.00001016 y_0=99999.99998984 units=us-ft
26852|NAD83 / Nebraska (ftUS)|proj=lcc lat_0=39.8333333333333 lon_0=-100 lat_1=43 lat_2=40 x_0=500000.00001016 y_0=0 units=us-ft
26853|NAD83 / West Virginia North (ftUS)|proj=lcc lat_0=38.5 lon_0=-79.5 lat_1=40.25 lat_2=39 x_0=600000 y_0=0 units=us-ft
26854|NAD83 / West Virginia South (ftUS)|proj=lcc lat_0=37 lon_0=-81 lat_1=38.8833333333333 lat_2=37.4833333333333 x_0=600000 y_0=0 units=us-ft
26929|NAD83 / Alabama East|proj=tmerc lat_0=30.5 lon_0=-85.8333333333333 k=0.99996 x_0=200000 y_0=0
26930|NAD83 / Alabama West|proj=tmerc lat_0=30 lon_0=-87.5 k=0.999933333 x_0=600000 y_0=0
26931|NAD83 / Alaska zone 1|proj=omerc no_uoff lat_0=57 lonc=-133.666666666667 alpha=323.130102361111 gamma=323.130102361111 k=0.9999 x_0=5000000 y_0=-5000000
26932|NAD83 / Alaska zone 2|proj=tmerc lat_0=54 lon_0=-142 k=0.9999 x_0=500000 y_0=0
26933|NAD83 / Alaska zone 3|proj=tmerc lat_0=54 lon_0=-146 k=0.9999 x_0=500000 y_0=0
26934|NAD83 / Alaska zone 4|proj=tmerc lat_0=54 lon_0=-150 k=0.9999 x_0=500000 y_0=0
26935|NAD83 / Alaska zone 5|proj=tmerc lat_0=54 lon_0=-154 k=0.9999 x_0=500000 y_0=0
26936|NAD83 / Alaska zone 6|proj=tmerc lat_0=54 lon_0=-158 k=0.9999 x_0=500000 y_0=0
26937|NAD83 / Alaska zone 7|proj=tmerc lat_0=54 lon_0=-162 k=0.9999 x_0=500000 y_0=0
26938|NAD83 / Alaska zone 8|proj=tmerc lat_0=54 lon_0=-166 k=0.9999 x_0=500000 y_0=0
26939|NAD83 / Alaska zone 9|proj=tmerc lat_0=54 lon_0=-170 k=0.9999 x_0=500000 y_0=0
26940|NAD83 / Alaska zone 10|proj=lcc lat_0=51 lon_0=-176 lat_1=53.8333333333333 lat_2=51.8333333333333 x_0=1000000 y_0=0
26941|NAD83 / California zone 1|proj=lcc lat_0=39.3333333333333 lon_0=-122 lat_1=41.6666666666667 lat_2=40 x_0=2000000 y_0=500000
26942|NAD83 / California zone 2|proj=lcc lat_0=37.6666666666667 lon_0=-122 lat_1=39.8333333333333 lat_2=38.3333333333333 x_0=2000000 y_0=500000
26943|NAD83 / California zone 3|proj=lcc lat_0=36.5 lon_0=-120.5 lat_1=38.4333333333333 lat_2=37.0666666666667 x_0=2000000 y_0=500000
26944|NAD83 / California zone 4|proj=lcc lat_0=35.3333333333333 lon_0=-119 lat_1=37.25 lat_2=36 x_0=2000000 y_0=500000
26945|NAD83 / California zone 5|proj=lcc lat_0=33.5 lon_0=-118 lat_1=35.4666666666667 lat_2=34.0333333333333 x_0=2000000 y_0=500000
26946|NAD83 / California zone 6|proj=lcc lat_0=32.1666666666667 lon_0=-116.25 lat_1=33.8833333333333 lat_2=32.7833333333333 x_0=2000000 y_0=500000
26948|NAD83 / Arizona East|proj=tmerc lat_0=31 lon_0=-110.166666666667 k=0.9999 x_0=213360 y_0=0
26949|NAD83 / Arizona Central|proj=tmerc lat_0=31 lon_0=-111.916666666667 k=0.9999 x_0=213360 y_0=0
26950|NAD83 / Arizona West|proj=tmerc lat_0=31 lon_0=-113.75 k=0.999933333 x_0=213360 y_0=0
26951|NAD83 / Arkansas North|proj=lcc lat_0=34.3333333333333 lon_0=-92 lat_1=36.2333333333333 lat_2=34.9333333333333 x_0=400000 y_0=0
26952|NAD83 / Arkansas South|proj=lcc lat_0=32.6666666666667 lon_0=-92 lat_1=34.7666666666667 lat_2=33.3 x_0=400000 y_0=400000
26953|NAD83 / Colorado North|proj=lcc lat_0=39.3333333333333 lon_0=-105.5 lat_1=40.7833333333333 lat_2=39.7166666666667 x_0=914401.8289 y_0=304800.6096
26954|NAD83 / Colorado Central|proj=lcc lat_0=37.8333333333333 lon_0=-105.5 lat_1=39.75 lat_2=38.45 x_0=914401.8289 y_0=304800.6096
26955|NAD83 / Colorado South|proj=lcc lat_0=36.6666666666667 lon_0=-105.5 lat_1=38.4333333333333 lat_2=37.2333333333333 x_0=914401.8289 y_0=304800.6096
26956|NAD83 / Connecticut|proj=lcc lat_0=40.8333333333333 lon_0=-72.75 lat_1=41.8666666666667 lat_2=41.2 x_0=304800.6096 y_0=152400.3048
26957|NAD83 / Delaware|proj=tmerc lat_0=38 lon_0=-75.4166666666667 k=0.999995 x_0=200000 y_0=0
26958|NAD83 / Florida East|proj=tmerc lat_0=24.3333333333333 lon_0=-81 k=0.999941177 x_0=200000 y_0=0
26959|NAD83 / Florida West|proj=tmerc lat_0=24.3333333333333 lon_0=-82 k=0.999941177 x_0=200000 y_0=0
26960|NAD83 / Florida North|proj=lcc lat_0=29 lon_0=-84.5 lat_1=30.75 lat_2=29.5833333333333 x_0=600000 y_0=0
26961|NAD83 / Hawaii zone 1|proj=tmerc lat_0=18.8333333333333 lon_0=-155.5 k=0.999966667 x_0=500000 y_0=0
26962|NAD83 / Hawaii zone 2|proj=tmerc lat_0=20.3333333333333 lon_0=-156.666666666667 k=0.999966667 x_0=500000 y_0=0
26963|NAD83 / Hawaii zone 3|proj=tmerc lat_0=21.1666666666667 lon_0=-158 k=0.99999 x_0=500000 y_0=0
26964|NAD83 / Hawaii zone 4|proj=tmerc lat_0=21.8333333333333 lon_0=-159.5 k=0.99999 x_0=500000 y_0=0
26965|NAD83 / Hawaii zone 5|proj=tmerc lat_0=21.6666666666667 lon_0=-160.166666666667 k=1 x_0=500000 y_0=0
26966|NAD83 / Georgia East|proj=tmerc lat_0=30 lon_0=-82.1666666666667 k=0.9999 x_0=200000 y_0=0
26967|NAD83 / Georgia West|proj=tmerc lat_0=30 lon_0=-84.1666666666667 k=0.9999 x_0=700000 y_0=0
26968|NAD83 / Idaho East|proj=tmerc lat_0=41.6666666666667 lon_0=-112.166666666667 k=0.999947368 x_0=200000 y_0=0
26969|NAD83 / Idaho Central|proj=tmerc lat_0=41.6666666666667 lon_0=-114 k=0.999947368 x_0=500000 y_0=0
26970|NAD83 / Idaho West|proj=tmerc lat_0=41.6666666666667 lon_0=-115.75 k=0.999933333 x_0=800000 y_0=0
26971|NAD83 / Illinois East|proj=tmerc lat_0=36.6666666666667 lon_0=-88.3333333333333 k=0.999975 x_0=300000 y_0=0
26972|NAD83 / Illinois West|proj=tmerc lat_0=36.6666666666667 lon_0=-90.1666666666667 k=0.999941177 x_0=700000 y_0=0
26973|NAD83 / Indiana East|proj=tmerc lat_0=37.5 lon_0=-85.6666666666667 k=0.999966667 x_0=100000 y_0=250000
26974|NAD83 / Indiana West|proj=tmerc lat_0=37.5 lon_0=-87.0833333333333 k=0.999966667 x_0=900000 y_0=250000
26975|NAD83 / Iowa North|proj=lcc lat_0=41.5 lon_0=-93.5 lat_1=43.2666666666667 lat_2=42.0666666666667 x_0=1500000 y_0=1000000
26976|NAD83 / Iowa South|proj=lcc lat_0=40 lon_0=-93.5 lat_1=41.7833333333333 lat_2=40.6166666666667 x_0=500000 y_0=0
26977|NAD83 / Kansas North|proj=lcc lat_0=38.3333333333333 lon_0=-98 lat_1=39.7833333333333 lat_2=38.7166666666667 x_0=400000 y_0=0
26978|NAD83 / Kansas South|proj=lcc lat_0=36.6666666666667 lon_0=-98.5 lat_1=38.5666666666667 lat_2=37.2666666666667 x_0=400000 y_0=400000
26980|NAD83 / Kentucky South|proj=lcc lat_0=36.3333333333333 lon_0=-85.75 lat_1=37.9333333333333 lat_2=36.7333333333333 x_0=500000 y_0=500000
26981|NAD83 / Louisiana North|proj=lcc lat_0=30.5 lon_0=-92.5 lat_1=32.6666666666667 lat_2=31.1666666666667 x_0=1000000 y_0=0
26982|NAD83 / Louisiana South|proj=lcc lat_0=28.5 lon_0=-91.3333333333333 lat_1=30.7 lat_2=29.3 x_0=1000000 y_0=0
26983|NAD83 / Maine East|proj=tmerc lat_0=43.6666666666667 lon_0=-68.5 k=0.9999 x_0=300000 y_0=0
26984|NAD83 / Maine West|proj=tmerc lat_0=42.8333333333333 lon_0=-70.1666666666667 k=0.999966667 x_0=900000 y_0=0
26985|NAD83 / Maryland|proj=lcc lat_0=37.6666666666667 lon_0=-77 lat_1=39.45 lat_2=38.3 x_0=400000 y_0=0
26986|NAD83 / Massachusetts Mainland|proj=lcc lat_0=41 lon_0=-71.5 lat_1=42.6833333333333 lat_2=41.7166666666667 x_0=200000 y_0=750000
26987|NAD83 / Massachusetts Island|proj=lcc lat_0=41 lon_0=-70.5 lat_1=41.4833333333333 lat_2=41.2833333333333 x_0=500000 y_0=0
26988|NAD83 / Michigan North|proj=lcc lat_0=44.7833333333333 lon_0=-87 lat_1=47.0833333333333 lat_2=45.4833333333333 x_0=8000000 y_0=0
26989|NAD83 / Michigan Central|proj=lcc lat_0=43.3166666666667 lon_0=-84.3666666666667 lat_1=45.7 lat_2=44.1833333333333 x_0=6000000 y_0=0
26990|NAD83 / Michigan South|proj=lcc lat_0=41.5 lon_0=-84.3666666666667 lat_1=43.6666666666667 lat_2=42.1 x_0=4000000 y_0=0
26991|NAD83 / Minnesota North|proj=lcc lat_0=46.5 lon_0=-93.1 lat_1=48.6333333333333 lat_2=47.0333333333333 x_0=800000 y_0=100000
26992|NAD83 / Minnesota Central|proj=lcc lat_0=45 lon_0=-94.25 lat_1=47.05 lat_2=45.6166666666667 x_0=800000 y_0=100000
26993|NAD83 / Minnesota South|proj=lcc lat_0=43 lon_0=-94 lat_1=45.2166666666667 lat_2=43.7833333333333 x_0=800000 y_0=100000
26994|NAD83 / Mississippi East|proj=tmerc lat_0=29.5 lon_0=-88.8333333333333 k=0.99995 x_0=300000 y_0=0
26995|NAD83 / Mississippi West|proj=tmerc lat_0=29.5 lon_0=-90.3333333333333 k=0.99995 x_0=700000 y_0=0
26996|NAD83 / Missouri East|proj=tmerc lat_0=35.8333333333333 lon_0=-90.5 k=0.999933333 x_0=250000 y_0=0
26997|NAD83 / Missouri Central|proj=tmerc lat_0=35.8333333333333 lon_0=-92.5 k=0.999933333 x_0=500000 y_0=0
26998|NAD83 / Missouri West|proj=tmerc lat_0=36.1666666666667 lon_0=-94.5 k=0.999941177 x_0=850000 y_0=0
32100|NAD83 / Montana|proj=lcc lat_0=44.25 lon_0=-109.5 lat_1=49 lat_2=45 x_0=600000 y_0=0
32104|NAD83 / Nebraska|proj=lcc lat_0=39.8333333333333 lon_0=-100 lat_1=43 lat_2=40 x_0=500000 y_0=0
32107|NAD83 / Nevada East|proj=tmerc lat_0=34.75 lon_0=-115.583333333333 k=0.9999 x_0=200000 y_0=8000000
32108|NAD83 / Nevada Central|proj=tmerc lat_0=34.75 lon_0=-116.666666666667 k=0.9999 x_0=500000 y_0=6000000
32109|NAD83 / Nevada West|proj=tmerc lat_0=34.75 lon_0=-118.583333333333 k=0.9999 x_0=800000 y_0=4000000
32110|NAD83 / New Hampshire|proj=tmerc lat_0=42.5 lon_0=-71.6666666666667 k=0.999966667 x_0=300000 y_0=0
32111|NAD83 / New Jersey|proj=tmerc lat_0=38.8333333333333 lon_0=-74.5 k=0.9999 x_0=150000 y_0=0
32112|NAD83 / New Mexico East|proj=tmerc lat_0=31 lon_0=-104.333333333333 k=0.999909091 x_0=165000 y_0=0
32113|NAD83 / New Mexico Central|proj=tmerc lat_0=31 lon_0=-106.25 k=0.9999 x_0=500000 y_0=0
32114|NAD83 / New Mexico West|proj=tmerc lat_0=31 lon_0=-107.833333333333 k=0.999916667 x_0=830000 y_0=0
32115|NAD83 / New York East|=32111
32116|NAD83 / New York Central|proj=tmerc lat_0=40 lon_0=-76.5833333333333 k=0.9999375 x_0=250000 y_0=0
32117|NAD83 / New York West|proj=tmerc lat_0=40 lon_0=-78.5833333333333 k=0.9999375 x_0=350000 y_0=0
32118|NAD83 / New York Long Island|proj=lcc lat_0=40.1666666666667 lon_0=-74 lat_1=41.0333333333333 lat_2=40.6666666666667 x_0=300000 y_0=0
32119|NAD83 / North Carolina|proj=lcc lat_0=33.75 lon_0=-79 lat_1=36.1666666666667 lat_2=34.3333333333333 x_0=609601.22 y_0=0
32120|NAD83 / North Dakota North|proj=lcc lat_0=47 lon_0=-100.5 lat_1=48.7333333333333 lat_2=47.4333333333333 x_0=600000 y_0=0
32121|NAD83 / North Dakota South|proj=lcc lat_0=45.6666666666667 lon_0=-100.5 lat_1=47.4833333333333 lat_2=46.1833333333333 x_0=600000 y_0=0
32122|NAD83 / Ohio North|proj=lcc lat_0=39.6666666666667 lon_0=-82.5 lat_1=41.7 lat_2=40.4333333333333 x_0=600000 y_0=0
32123|NAD83 / Ohio South|proj=lcc lat_0=38 lon_0=-82.5 lat_1=40.0333333333333 lat_2=38.7333333333333 x_0=600000 y_0=0
32124|NAD83 / Oklahoma North|proj=lcc lat_0=35 lon_0=-98 lat_1=36.7666666666667 lat_2=35.5666666666667 x_0=600000 y_0=0
32125|NAD83 / Oklahoma South|proj=lcc lat_0=33.3333333333333 lon_0=-98 lat_1=35.2333333333333 lat_2=33.9333333333333 x_0=600000 y_0=0
32126|NAD83 / Oregon North|proj=lcc lat_0=43.6666666666667 lon_0=-120.5 lat_1=46 lat_2=44.3333333333333 x_0=2500000 y_0=0
32127|NAD83 / Oregon South|proj=lcc lat_0=41.6666666666667 lon_0=-120.5 lat_1=44 lat_2=42.3333333333333 x_0=1500000 y_0=0
32128|NAD83 / Pennsylvania North|proj=lcc lat_0=40.1666666666667 lon_0=-77.75 lat_1=41.95 lat_2=40.8833333333333 x_0=600000 y_0=0
32129|NAD83 / Pennsylvania South|proj=lcc lat_0=39.3333333333333 lon_0=-77.75 lat_1=40.9666666666667 lat_2=39.9333333333333 x_0=600000 y_0=0
32130|NAD83 / Rhode Island|proj=tmerc lat_0=41.0833333333333 lon_0=-71.5 k=0.99999375 x_0=100000 y_0=0
32133|NAD83 / South Carolina|proj=lcc lat_0=31.8333333333333 lon_0=-81 lat_1=34.8333333333333 lat_2=32.5 x_0=609600 y_0=0
32134|NAD83 / South Dakota North|proj=lcc lat_0=43.8333333333333 lon_0=-100 lat_1=45.6833333333333 lat_2=44.4166666666667 x_0=600000 y_0=0
32135|NAD83 / South Dakota South|proj=lcc lat_0=42.3333333333333 lon_0=-100.333333333333 lat_1=44.4 lat_2=42.8333333333333 x_0=600000 y_0=0
32136|NAD83 / Tennessee|proj=lcc lat_0=34.3333333333333 lon_0=-86 lat_1=36.4166666666667 lat_2=35.25 x_0=600000 y_0=0
32137|NAD83 / Texas North|proj=lcc lat_0=34 lon_0=-101.5 lat_1=36.1833333333333 lat_2=34.65 x_0=200000 y_0=1000000
32138|NAD83 / Texas North Central|proj=lcc lat_0=31.6666666666667 lon_0=-98.5 lat_1=33.9666666666667 lat_2=32.1333333333333 x_0=600000 y_0=2000000
32139|NAD83 / Texas Central|proj=lcc lat_0=29.6666666666667 lon_0=-100.333333333333 lat_1=31.8833333333333 lat_2=30.1166666666667 x_0=700000 y_0=3000000
32140|NAD83 / Texas South Central|proj=lcc lat_0=27.8333333333333 lon_0=-99 lat_1=30.2833333333333 lat_2=28.3833333333333 x_0=600000 y_0=4000000
32141|NAD83 / Texas South|proj=lcc lat_0=25.6666666666667 lon_0=-98.5 lat_1=27.8333333333333 lat_2=26.1666666666667 x_0=300000 y_0=5000000
32142|NAD83 / Utah North|proj=lcc lat_0=40.3333333333333 lon_0=-111.5 lat_1=41.7833333333333 lat_2=40.7166666666667 x_0=500000 y_0=1000000
32143|NAD83 / Utah Central|proj=lcc lat_0=38.3333333333333 lon_0=-111.5 lat_1=40.65 lat_2=39.0166666666667 x_0=500000 y_0=2000000
32144|NAD83 / Utah South|proj=lcc lat_0=36.6666666666667 lon_0=-111.5 lat_1=38.35 lat_2=37.2166666666667 x_0=500000 y_0=3000000
32145|NAD83 / Vermont|proj=tmerc lat_0=42.5 lon_0=-72.5 k=0.999964286 x_0=500000 y_0=0
32146|NAD83 / Virginia North|proj=lcc lat_0=37.6666666666667 lon_0=-78.5 lat_1=39.2 lat_2=38.0333333333333 x_0=3500000 y_0=2000000
32147|NAD83 / Virginia South|proj=lcc lat_0=36.3333333333333 lon_0=-78.5 lat_1=37.9666666666667 lat_2=36.7666666666667 x_0=3500000 y_0=1000000
32148|NAD83 / Washington North|proj=lcc lat_0=47 lon_0=-120.833333333333 lat_1=48.7333333333333 lat_2=47.5 x_0=500000 y_0=0
32149|NAD83 / Washington South|proj=lcc lat_0=45.3333333333333 lon_0=-120.5 lat_1=47.3333333333333 lat_2=45.8333333333333 x_0=500000 y_0=0
32150|NAD83 / West Virginia North|proj=lcc lat_0=38.5 lon_0=-79.5 lat_1=40.25 lat_2=39 x_0=600000 y_0=0
32151|NAD83 / West Virginia South|proj=lcc lat_0=37 lon_0=-81 lat_1=38.8833333333333 lat_2=37.4833333333333 x_0=600000 y_0=0
32152|NAD83 / Wisconsin North|proj=lcc lat_0=45.1666666666667 lon_0=-90 lat_1=46.7666666666667 lat_2=45.5666666666667 x_0=600000 y_0=0
32153|NAD83 / Wisconsin Central|proj=lcc lat_0=43.8333333333333 lon_0=-90 lat_1=45.5 lat_2=44.25 x_0=600000 y_0=0
32154|NAD83 / Wisconsin South|proj=lcc lat_0=42 lon_0=-90 lat_1=44.0666666666667 lat_2=42.7333333333333 x_0=600000 y_0=0
32155|NAD83 / Wyoming East|proj=tmerc lat_0=40.5 lon_0=-105.166666666667 k=0.9999375 x_0=200000 y_0=0
32156|NAD83 / Wyoming East Central|proj=tmerc lat_0=40.5 lon_0=-107.333333333333 k=0.9999375 x_0=400000 y_0=100000
32157|NAD83 / Wyoming West Central|proj=tmerc lat_0=40.5 lon_0=-108.75 k=0.9999375 x_0=600000 y_0=0
32158|NAD83 / Wyoming West|proj=tmerc lat_0=40.5 lon_0=-110.083333333333 k=0.9999375 x_0=800000 y_0=100000
32159|NAD83 / Wyoming Lambert|proj=lcc lat_0=41 lon_0=-107.5 lat_1=41 lat_2=45 x_0=500000 y_0=200000
32161|NAD83 / Puerto Rico & Virgin Is.|proj=lcc lat_0=17.8333333333333 lon_0=-66.4333333333333 lat_1=18.4333333333333 lat_2=18.0333333333333 x_0=200000 y_0=200000
32164|NAD83 / BLM 14N (ftUS)|proj=tmerc lat_0=0 lon_0=-99 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
32165|NAD83 / BLM 15N (ftUS)|proj=tmerc lat_0=0 lon_0=-93 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
32166|NAD83 / BLM 16N (ftUS)|proj=tmerc lat_0=0 lon_0=-87 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
32167|NAD83 / BLM 17N (ftUS)|proj=tmerc lat_0=0 lon_0=-81 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft
32181|NAD83 / MTM zone 1|proj=tmerc lat_0=0 lon_0=-53 k=0.9999 x_0=304800 y_0=0
32182|NAD83 / MTM zone 2|proj=tmerc lat_0=0 lon_0=-56 k=0.9999 x_0=304800 y_0=0
32183|NAD83 / MTM zone 3|proj=tmerc lat_0=0 lon_0=-58.5 k=0.9999 x_0=304800 y_0=0
32184|NAD83 / MTM zone 4|proj=tmerc lat_0=0 lon_0=-61.5 k=0.9999 x_0=304800 y_0=0
32185|NAD83 / MTM zone 5|proj=tmerc lat_0=0 lon_0=-64.5 k=0.9999 x_0=304800 y_0=0
32186|NAD83 / MTM zone 6|proj=tmerc lat_0=0 lon_0=-67.5 k=0.9999 x_0=304800 y_0=0
32187|NAD83 / MTM zone 7|proj=tmerc lat_0=0 lon_0=-70.5 k=0.9999 x_0=304800 y_0=0
32188|NAD83 / MTM zone 8|proj=tmerc lat_0=0 lon_0=-73.5 k=0.9999 x_0=304800 y_0=0
32189|NAD83 / MTM zone 9|proj=tmerc lat_0=0 lon_0=-76.5 k=0.9999 x_0=304800 y_0=0
32190|NAD83 / MTM zone 10|proj=tmerc lat_0=0 lon_0=-79.5 k=0.9999 x_0=304800 y_0=0
32191|NAD83 / MTM zone 11|proj=tmerc lat_0=0 lon_0=-82.5 k=0.9999 x_0=304800 y_0=0
32192|NAD83 / MTM zone 12|proj=tmerc lat_0=0 lon_0=-81 k=0.9999 x_0=304800 y_0=0
32193|NAD83 / MTM zone 13|proj=tmerc lat_0=0 lon_0=-84 k=0.9999 x_0=304800 y_0=0
32194|NAD83 / MTM zone 14|proj=tmerc lat_0=0 lon_0=-87 k=0.9999 x_0=304800 y_0=0
32195|NAD83 / MTM zone 15|proj=tmerc lat_0=0 lon_0=-90 k=0.9999 x_0=304800 y_0=0
32196|NAD83 / MTM zone 16|proj=tmerc lat_0=0 lon_0=-93 k=0.9999 x_0=304800 y_0=0
32197|NAD83 / MTM zone 17|proj=tmerc lat_0=0 lon_0=-96 k=0.9999 x_0=304800 y_0=0
32198|NAD83 / Quebec Lambert|proj=lcc lat_0=44 lon_0=-68.5 lat_1=60 lat_2=46 x_0=0 y_0=0
32199|NAD83 / Louisiana Offshore|proj=lcc lat_0=25.5 lon_0=-91.3333333333333 lat_1=27.8333333333333 lat_2=26.1666666666667 x_0=1000000 y_0=0
@NAD83 (High Accuracy Reference Network)
2195|NAD83(HARN) / UTM zone 2S|proj=utm zone=2 south
2759|NAD83(HARN) / Alabama East|=26929
2760|NAD83(HARN) / Alabama West|=26930
2761|NAD83(HARN) / Arizona East|=26948
2762|NAD83(HARN) / Arizona Central|=26949
2763|NAD83(HARN) / Arizona West|=26950
2764|NAD83(HARN) / Arkansas North|=26951
2765|NAD83(HARN) / Arkansas South|=26952
2766|NAD83(HARN) / California zone 1|=26941
2767|NAD83(HARN) / California zone 2|=26942
2768|NAD83(HARN) / California zone 3|=26943
2769|NAD83(HARN) / California zone 4|=26944
2770|NAD83(HARN) / California zone 5|=26945
2771|NAD83(HARN) / California zone 6|=26946
2772|NAD83(HARN) / Colorado North|=26953
2773|NAD83(HARN) / Colorado Central|=26954
2774|NAD83(HARN) / Colorado South|=26955
2775|NAD83(HARN) / Connecticut|=26956
2776|NAD83(HARN) / Delaware|=26957
2777|NAD83(HARN) / Florida East|=26958
2778|NAD83(HARN) / Florida West|=26959
2779|NAD83(HARN) / Florida North|=26960
2780|NAD83(HARN) / Georgia East|=26966
2781|NAD83(HARN) / Georgia West|=26967
2782|NAD83(HARN) / Hawaii zone 1|=26961
2783|NAD83(HARN) / Hawaii zone 2|=26962
2784|NAD83(HARN) / Hawaii zone 3|=26963
2785|NAD83(HARN) / Hawaii zone 4|=26964
2786|NAD83(HARN) / Hawaii zone 5|=26965
2787|NAD83(HARN) / Idaho East|=26968
2788|NAD83(HARN) / Idaho Central|=26969
2789|NAD83(HARN) / Idaho West|=26970
2790|NAD83(HARN) / Illinois East|=26971
2791|NAD83(HARN) / Illinois West|=26972
2792|NAD83(HARN) / Indiana East|=26973
2793|NAD83(HARN) / Indiana West|=26974
2794|NAD83(HARN) / Iowa North|=26975
2795|NAD83(HARN) / Iowa South|=26976
2796|NAD83(HARN) / Kansas North|=26977
2797|NAD83(HARN) / Kansas South|=26978
2798|NAD83(HARN) / Kentucky North|=2205
2799|NAD83(HARN) / Kentucky South|=26980
2800|NAD83(HARN) / Louisiana North|=26981
2801|NAD83(HARN) / Louisiana South|=26982
2802|NAD83(HARN) / Maine East|=26983
2803|NAD83(HARN) / Maine West|=26984
2804|NAD83(HARN) / Maryland|=26985
2805|NAD83(HARN) / Massachusetts Mainland|=26986
2806|NAD83(HARN) / Massachusetts Island|=26987
2807|NAD83(HARN) / Michigan North|=26988
2808|NAD83(HARN) / Michigan Central|=26989
2809|NAD83(HARN) / Michigan South|=26990
2810|NAD83(HARN) / Minnesota North|=26991
2811|NAD83(HARN) / Minnesota Central|=26992
2812|NAD83(HARN) / Minnesota South|=26993
2813|NAD83(HARN) / Mississippi East|=26994
2814|NAD83(HARN) / Mississippi West|=26995
2815|NAD83(HARN) / Missouri East|=26996
2816|NAD83(HARN) / Missouri Central|=26997
2817|NAD83(HARN) / Missouri West|=26998
2818|NAD83(HARN) / Montana|=32100
2819|NAD83(HARN) / Nebraska|=32104
2820|NAD83(HARN) / Nevada East|=32107
2821|NAD83(HARN) / Nevada Central|=32108
2822|NAD83(HARN) / Nevada West|=32109
2823|NAD83(HARN) / New Hampshire|=32110
2824|NAD83(HARN) / New Jersey|=32111
2825|NAD83(HARN) / New Mexico East|=32112
2826|NAD83(HARN) / New Mexico Central|=32113
2827|NAD83(HARN) / New Mexico West|=32114
2828|NAD83(HARN) / New York East|=32111
2829|NAD83(HARN) / New York Central|=32116
2830|NAD83(HARN) / New York West|=32117
2831|NAD83(HARN) / New York Long Island|=32118
2832|NAD83(HARN) / North Dakota North|=32120
2833|NAD83(HARN) / North Dakota South|=32121
2834|NAD83(HARN) / Ohio North|=32122
2835|NAD83(HARN) / Ohio South|=32123
2836|NAD83(HARN) / Oklahoma North|=32124
2837|NAD83(HARN) / Oklahoma South|=32125
2838|NAD83(HARN) / Oregon North|=32126
2839|NAD83(HARN) / Oregon South|=32127
2840|NAD83(HARN) / Rhode Island|=32130
2841|NAD83(HARN) / South Dakota North|=32134
2842|NAD83(HARN) / South Dakota South|=32135
2843|NAD83(HARN) / Tennessee|=32136
2844|NAD83(HARN) / Texas North|=32137
2845|NAD83(HARN) / Texas North Central|=32138
2846|NAD83(HARN) / Texas Central|=32139
2847|NAD83(HARN) / Texas South Central|=32140
2848|NAD83(HARN) / Texas South|=32141
2849|NAD83(HARN) / Utah North|=32142
2850|NAD83(HARN) / Utah Central|=32143
2851|NAD83(HARN) / Utah South|=32144
2852|NAD83(HARN) / Vermont|=32145
2853|NAD83(HARN) / Virginia North|=32146
2854|NAD83(HARN) / Virginia South|=32147
2855|NAD83(HARN) / Washington North|=32148
2856|NAD83(HARN) / Washington South|=32149
2857|NAD83(HARN) / West Virginia North|=32150
2858|NAD83(HARN) / West Virginia South|=32151
2859|NAD83(HARN) / Wisconsin North|=32152
2860|NAD83(HARN) / Wisconsin Central|=32153
2861|NAD83(HARN) / Wisconsin South|=32154
2862|NAD83(HARN) / Wyoming East|=32155
2863|NAD83(HARN) / Wyoming East Central|=32156
2864|NAD83(HARN) / Wyoming West Central|=32157
2865|NAD83(HARN) / Wyoming West|=32158
2866|NAD83(HARN) / Puerto Rico and Virgin Is.|=32161
2867|NAD83(HARN) / Arizona East (ft)|=2222
2868|NAD83(HARN) / Arizona Central (ft)|=2223
2869|NAD83(HARN) / Arizona West (ft)|=2224
2870|NAD83(HARN) / California zone 1 (ftUS)|=2225
2871|NAD83(HARN) / California zone 2 (ftUS)|=2226
2872|NAD83(HARN) / California zone 3 (ftUS)|=2227
2873|NAD83(HARN) / California zone 4 (ftUS)|=2228
2874|NAD83(HARN) / California zone 5 (ftUS)|=2229
2875|NAD83(HARN) / California zone 6 (ftUS)|=2230
2876|NAD83(HARN) / Colorado North (ftUS)|=2231
2877|NAD83(HARN) / Colorado Central (ftUS)|=2232
2878|NAD83(HARN) / Colorado South (ftUS)|=2233
2879|NAD83(HARN) / Connecticut (ftUS)|=2234
2880|NAD83(HARN) / Delaware (ftUS)|=2235
2881|NAD83(HARN) / Florida East (ftUS)|=2236
2882|NAD83(HARN) / Florida West (ftUS)|=2237
2883|NAD83(HARN) / Florida North (ftUS)|=2238
2884|NAD83(HARN) / Georgia East (ftUS)|=2239
2885|NAD83(HARN) / Georgia West (ftUS)|=2240
2886|NAD83(HARN) / Idaho East (ftUS)|=2241
2887|NAD83(HARN) / Idaho Central (ftUS)|=2242
2888|NAD83(HARN) / Idaho West (ftUS)|=2243
2891|NAD83(HARN) / Kentucky North (ftUS)|=2246
2892|NAD83(HARN) / Kentucky South (ftUS)|=2247
2893|NAD83(HARN) / Maryland (ftUS)|=2248
2894|NAD83(HARN) / Massachusetts Mainland (ftUS)|=2249
2895|NAD83(HARN) / Massachusetts Island (ftUS)|=2250
2896|NAD83(HARN) / Michigan North (ft)|=2251
2897|NAD83(HARN) / Michigan Central (ft)|=2252
2898|NAD83(HARN) / Michigan South (ft)|=2253
2899|NAD83(HARN) / Mississippi East (ftUS)|=2254
2900|NAD83(HARN) / Mississippi West (ftUS)|=2255
2901|NAD83(HARN) / Montana (ft)|=2256
2902|NAD83(HARN) / New Mexico East (ftUS)|=2257
2903|NAD83(HARN) / New Mexico Central (ftUS)|=2258
2904|NAD83(HARN) / New Mexico West (ftUS)|=2259
2905|NAD83(HARN) / New York East (ftUS)|=2260
2906|NAD83(HARN) / New York Central (ftUS)|=2261
2907|NAD83(HARN) / New York West (ftUS)|=2262
2908|NAD83(HARN) / New York Long Island (ftUS)|=2263
2909|NAD83(HARN) / North Dakota North (ft)|=2265
2910|NAD83(HARN) / North Dakota South (ft)|=2266
2911|NAD83(HARN) / Oklahoma North (ftUS)|=2267
2912|NAD83(HARN) / Oklahoma South (ftUS)|=2268
2913|NAD83(HARN) / Oregon North (ft)|=2269
2914|NAD83(HARN) / Oregon South (ft)|=2270
2915|NAD83(HARN) / Tennessee (ftUS)|=2274
2916|NAD83(HARN) / Texas North (ftUS)|=2275
2917|NAD83(HARN) / Texas North Central (ftUS)|=2276
2918|NAD83(HARN) / Texas Central (ftUS)|=2277
2919|NAD83(HARN) / Texas South Central (ftUS)|=2278
2920|NAD83(HARN) / Texas South (ftUS)|=2279
2921|NAD83(HARN) / Utah North (ft)|=2280
2922|NAD83(HARN) / Utah Central (ft)|=2281
2923|NAD83(HARN) / Utah South (ft)|=2282
2924|NAD83(HARN) / Virginia North (ftUS)|=2283
2925|NAD83(HARN) / Virginia South (ftUS)|=2284
2926|NAD83(HARN) / Washington North (ftUS)|=2285
2927|NAD83(HARN) / Washington South (ftUS)|=2286
2928|NAD83(HARN) / Wisconsin North (ftUS)|=2287
2929|NAD83(HARN) / Wisconsin Central (ftUS)|=2288
2930|NAD83(HARN) / Wisconsin South (ftUS)|=2289
2967|NAD83(HARN) / Indiana East (ftUS)|=2965
2968|NAD83(HARN) / Indiana West (ftUS)|=2966
2993|NAD83(HARN) / Oregon LCC (m)|=2991
2994|NAD83(HARN) / Oregon GIC Lambert (ft)|=2992
3071|NAD83(HARN) / Wisconsin Transverse Mercator|=3070
3075|NAD83(HARN) / Maine CS2000 East|=3072
3077|NAD83(HARN) / Maine CS2000 West|=3074
3079|NAD83(HARN) / Michigan Oblique Mercator|=3078
3084|NAD83(HARN) / Texas Centric Lambert Conformal|=3082
3085|NAD83(HARN) / Texas Centric Albers Equal Area|=3083
3087|NAD83(HARN) / Florida GDL Albers|=3086
3090|NAD83(HARN) / Kentucky Single Zone|=3088
3091|NAD83(HARN) / Kentucky Single Zone (ftUS)|=3089
3311|NAD83(HARN) / California Albers|=3310
3358|NAD83(HARN) / North Carolina|=32119
3360|NAD83(HARN) / South Carolina|=32133
3361|NAD83(HARN) / South Carolina (ft)|=2273
3362|NAD83(HARN) / Pennsylvania North|=32128
3363|NAD83(HARN) / Pennsylvania North (ftUS)|=2271
3364|NAD83(HARN) / Pennsylvania South|=32129
3365|NAD83(HARN) / Pennsylvania South (ftUS)|=2272
3404|NAD83(HARN) / North Carolina (ftUS)|=2264
3425|NAD83(HARN) / Iowa North (ftUS)|=3417
3426|NAD83(HARN) / Iowa South (ftUS)|=3418
3427|NAD83(HARN) / Kansas North (ftUS)|=3419
3428|NAD83(HARN) / Kansas South (ftUS)|=3420
3429|NAD83(HARN) / Nevada East (ftUS)|=3421
3430|NAD83(HARN) / Nevada Central (ftUS)|=3422
3431|NAD83(HARN) / Nevada West (ftUS)|=3423
3432|NAD83(HARN) / New Jersey (ftUS)|=2260
3441|NAD83(HARN) / Arkansas North (ftUS)|=3433
3442|NAD83(HARN) / Arkansas South (ftUS)|=3434
3443|NAD83(HARN) / Illinois East (ftUS)|=3435
3444|NAD83(HARN) / Illinois West (ftUS)|=3436
3445|NAD83(HARN) / New Hampshire (ftUS)|=3437
3446|NAD83(HARN) / Rhode Island (ftUS)|=3438
3456|NAD83(HARN) / Louisiana North (ftUS)|=3451
3457|NAD83(HARN) / Louisiana South (ftUS)|=3452
3458|NAD83(HARN) / South Dakota North (ftUS)|=4457
3459|NAD83(HARN) / South Dakota South (ftUS)|=3455
3464|NAD83(HARN) / Maine CS2000 Central|=3463
3568|NAD83(HARN) / Utah North (ftUS)|=3560
3569|NAD83(HARN) / Utah Central (ftUS)|=3566
3570|NAD83(HARN) / Utah South (ftUS)|=3567
3740|NAD83(HARN) / UTM zone 10N|proj=utm zone=10
3741|NAD83(HARN) / UTM zone 11N|proj=utm zone=11
3742|NAD83(HARN) / UTM zone 12N|proj=utm zone=12
3743|NAD83(HARN) / UTM zone 13N|proj=utm zone=13
3744|NAD83(HARN) / UTM zone 14N|proj=utm zone=14
3745|NAD83(HARN) / UTM zone 15N|proj=utm zone=15
3746|NAD83(HARN) / UTM zone 16N|proj=utm zone=16
3747|NAD83(HARN) / UTM zone 17N|proj=utm zone=17
3748|NAD83(HARN) / UTM zone 18N|proj=utm zone=18
3749|NAD83(HARN) / UTM zone 19N|proj=utm zone=19
3750|NAD83(HARN) / UTM zone 4N|proj=utm zone=4
3751|NAD83(HARN) / UTM zone 5N|proj=utm zone=5
3753|NAD83(HARN) / Ohio North (ftUS)|=3734
3754|NAD83(HARN) / Ohio South (ftUS)|=3735
3755|NAD83(HARN) / Wyoming East (ftUS)|=3736
3756|NAD83(HARN) / Wyoming East Central (ftUS)|=3737
3757|NAD83(HARN) / Wyoming West Central (ftUS)|=3738
3758|NAD83(HARN) / Wyoming West (ftUS)|=3739
3760|NAD83(HARN) / Hawaii zone 3 (ftUS)|=3759
3815|NAD83(HARN) / Mississippi TM|=3814
3969|NAD83(HARN) / Virginia Lambert|=3968
4152|NAD83(HARN)|=4269
4414|NAD83(HARN) / Guam Map Grid|proj=tmerc lat_0=13.5 lon_0=144.75 k=1 x_0=100000 y_0=200000
5071|NAD83(HARN) / Conus Albers|=5070
5654|NAD83(HARN) / Vermont (ftUS)|=5646
8090|NAD83(HARN) / WISCRS Florence (m)|proj=tmerc lat_0=45.4388888888889 lon_0=-88.1416666666667 k=1.0000552095 x_0=133502.6683 y_0=0.0063
8091|NAD83(HARN) / WISCRS Florence (ftUS)|proj=tmerc lat_0=45.4388888888889 lon_0=-88.1416666666667 k=1.0000552095 x_0=133502.668224536 y_0=0.0064008128016256 units=us-ft
8092|NAD83(HARN) / WISCRS Eau Claire (m)|proj=lcc lat_1=44.8722811263889 lat_0=44.8722811263889 lon_0=-91.2888888888889 k_0=1.000035079 x_0=120091.4402 y_0=91687.9239
8093|NAD83(HARN) / WISCRS Eau Claire (ftUS)|proj=lcc lat_1=44.8722811263889 lat_0=44.8722811263889 lon_0=-91.2888888888889 k_0=1.000035079 x_0=120091.44018288 y_0=91687.9239014478 units=us-ft
8095|NAD83(HARN) / WISCRS Wood (m)|proj=lcc lat_1=44.3625954694444 lat_0=44.3625954694444 lon_0=-90 k_0=1.0000421209 x_0=208483.6173 y_0=134589.754
8096|NAD83(HARN) / WISCRS Wood (ftUS)|proj=lcc lat_1=44.3625954694444 lat_0=44.3625954694444 lon_0=-90 k_0=1.0000421209 x_0=208483.617272035 y_0=134589.753924308 units=us-ft
8097|NAD83(HARN) / WISCRS Waushara (m)|proj=lcc lat_1=44.1139440458333 lat_0=44.1139440458333 lon_0=-89.2416666666667 k_0=1.0000392096 x_0=120091.4402 y_0=45069.7587
8098|NAD83(HARN) / WISCRS Waushara (ftUS)|proj=lcc lat_1=44.1139440458333 lat_0=44.1139440458333 lon_0=-89.2416666666667 k_0=1.0000392096 x_0=120091.44018288 y_0=45069.7588011176 units=us-ft
8099|NAD83(HARN) / WISCRS Waupaca (m)|proj=tmerc lat_0=43.4202777777778 lon_0=-88.8166666666667 k=1.0000333645 x_0=185013.9709 y_0=0.007
8100|NAD83(HARN) / WISCRS Waupaca (ftUS)|proj=tmerc lat_0=43.4202777777778 lon_0=-88.8166666666667 k=1.0000333645 x_0=185013.970942342 y_0=0.00701041402082804 units=us-ft
8101|NAD83(HARN) / WISCRS Waukesha (m)|proj=tmerc lat_0=42.5694444444444 lon_0=-88.225 k=1.0000346179 x_0=208788.418 y_0=0.0034
8102|NAD83(HARN) / WISCRS Waukesha (ftUS)|proj=tmerc lat_0=42.5694444444444 lon_0=-88.225 k=1.0000346179 x_0=208788.417881636 y_0=0.00335280670561341 units=us-ft
8103|NAD83(HARN) / WISCRS Washington (m)|proj=tmerc lat_0=42.9180555555556 lon_0=-88.0638888888889 k=1.00003738 x_0=120091.4415 y_0=0.003
8104|NAD83(HARN) / WISCRS Washington (ftUS)|proj=tmerc lat_0=42.9180555555556 lon_0=-88.0638888888889 k=1.00003738 x_0=120091.441402083 y_0=0.00304800609601219 units=us-ft
8105|NAD83(HARN) / WISCRS Washburn (m)|proj=lcc lat_1=45.9612198333333 lat_0=45.9612198333333 lon_0=-91.7833333333333 k_0=1.0000475376 x_0=234086.8682 y_0=188358.6058
8106|NAD83(HARN) / WISCRS Washburn (ftUS)|proj=lcc lat_1=45.9612198333333 lat_0=45.9612198333333 lon_0=-91.7833333333333 k_0=1.0000475376 x_0=234086.868173736 y_0=188358.605943612 units=us-ft
8107|NAD83(HARN) / WISCRS Walworth (m)|proj=lcc lat_1=42.6694620969444 lat_0=42.6694620969444 lon_0=-88.5416666666667 k_0=1.0000367192 x_0=232562.8651 y_0=111088.2224
8108|NAD83(HARN) / WISCRS Walworth (ftUS)|proj=lcc lat_1=42.6694620969444 lat_0=42.6694620969444 lon_0=-88.5416666666667 k_0=1.0000367192 x_0=232562.86512573 y_0=111088.222402845 units=us-ft
8109|NAD83(HARN) / WISCRS Vilas (m)|proj=lcc lat_1=46.0778440905556 lat_0=46.0778440905556 lon_0=-89.4888888888889 k_0=1.0000730142 x_0=134417.0689 y_0=50337.1092
8110|NAD83(HARN) / WISCRS Vilas (ftUS)|proj=lcc lat_1=46.0778440905556 lat_0=46.0778440905556 lon_0=-89.4888888888889 k_0=1.0000730142 x_0=134417.068834138 y_0=50337.1092710185 units=us-ft
8111|NAD83(HARN) / WISCRS Vernon (m)|proj=lcc lat_1=43.5750329397222 lat_0=43.5750329397222 lon_0=-90.7833333333333 k_0=1.0000408158 x_0=222504.4451 y_0=47532.0602
8112|NAD83(HARN) / WISCRS Vernon (ftUS)|proj=lcc lat_1=43.5750329397222 lat_0=43.5750329397222 lon_0=-90.7833333333333 k_0=1.0000408158 x_0=222504.44500889 y_0=47532.0603505207 units=us-ft
8113|NAD83(HARN) / WISCRS Trempealeau (m)|proj=tmerc lat_0=43.1611111111111 lon_0=-91.3666666666667 k=1.0000361538 x_0=256946.9138 y_0=0.0041
8114|NAD83(HARN) / WISCRS Trempealeau (ftUS)|proj=tmerc lat_0=43.1611111111111 lon_0=-91.3666666666667 k=1.0000361538 x_0=256946.913893828 y_0=0.00396240792481585 units=us-ft
8115|NAD83(HARN) / WISCRS Taylor (m)|proj=lcc lat_1=45.1778220858333 lat_0=45.1778220858333 lon_0=-90.4833333333333 k_0=1.0000597566 x_0=187147.5744 y_0=107746.7522
8116|NAD83(HARN) / WISCRS Taylor (ftUS)|proj=lcc lat_1=45.1778220858333 lat_0=45.1778220858333 lon_0=-90.4833333333333 k_0=1.0000597566 x_0=187147.574295149 y_0=107746.752146304 units=us-ft
8117|NAD83(HARN) / WISCRS St. Croix (m)|proj=tmerc lat_0=44.0361111111111 lon_0=-92.6333333333333 k=1.0000381803 x_0=165506.7302 y_0=0.0103
8118|NAD83(HARN) / WISCRS St. Croix (ftUS)|proj=tmerc lat_0=44.0361111111111 lon_0=-92.6333333333333 k=1.0000381803 x_0=165506.73009906 y_0=0.0103632207264415 units=us-ft
8119|NAD83(HARN) / WISCRS Shawano (m)|proj=tmerc lat_0=44.0361111111111 lon_0=-88.6055555555556 k=1.000032144 x_0=262433.3253 y_0=0.0096
8120|NAD83(HARN) / WISCRS Shawano (ftUS)|proj=tmerc lat_0=44.0361111111111 lon_0=-88.6055555555556 k=1.000032144 x_0=262433.32517145 y_0=0.0094488188976378 units=us-ft
8121|NAD83(HARN) / WISCRS Sawyer (m)|proj=lcc lat_1=45.9000991313889 lat_0=45.9000991313889 lon_0=-91.1166666666667 k_0=1.0000573461 x_0=216713.2336 y_0=120734.1631
8122|NAD83(HARN) / WISCRS Sawyer (ftUS)|proj=lcc lat_1=45.9000991313889 lat_0=45.9000991313889 lon_0=-91.1166666666667 k_0=1.0000573461 x_0=216713.233731268 y_0=120734.163169926 units=us-ft
8123|NAD83(HARN) / WISCRS Sauk (m)|proj=tmerc lat_0=42.8194444444444 lon_0=-89.9 k=1.0000373868 x_0=185623.5716 y_0=0.0051
8124|NAD83(HARN) / WISCRS Sauk (ftUS)|proj=tmerc lat_0=42.8194444444444 lon_0=-89.9 k=1.0000373868 x_0=185623.571551943 y_0=0.00518161036322073 units=us-ft
8125|NAD83(HARN) / WISCRS Rusk (m)|proj=tmerc lat_0=43.9194444444444 lon_0=-91.0666666666667 k=1.0000495976 x_0=250546.1013 y_0=0.0234
8126|NAD83(HARN) / WISCRS Rusk (ftUS)|proj=tmerc lat_0=43.9194444444444 lon_0=-91.0666666666667 k=1.0000495976 x_0=250546.101397003 y_0=0.0234696469392939 units=us-ft
8127|NAD83(HARN) / WISCRS Rock (m)|proj=tmerc lat_0=41.9444444444444 lon_0=-89.0722222222222 k=1.0000337311 x_0=146304.2926 y_0=0.0068
8128|NAD83(HARN) / WISCRS Rock (ftUS)|proj=tmerc lat_0=41.9444444444444 lon_0=-89.0722222222222 k=1.0000337311 x_0=146304.292608585 y_0=0.00670561341122682 units=us-ft
8129|NAD83(HARN) / WISCRS Richland (m)|proj=lcc lat_1=43.3223129275 lat_0=43.3223129275 lon_0=-90.4305555555556 k_0=1.0000375653 x_0=202387.6048 y_0=134255.4253
8130|NAD83(HARN) / WISCRS Richland (ftUS)|proj=lcc lat_1=43.3223129275 lat_0=43.3223129275 lon_0=-90.4305555555556 k_0=1.0000375653 x_0=202387.60477521 y_0=134255.425450851 units=us-ft
8131|NAD83(HARN) / WISCRS Price (m)|proj=tmerc lat_0=44.5555555555556 lon_0=-90.4888888888889 k=1.0000649554 x_0=227990.8546 y_0=0.0109
8132|NAD83(HARN) / WISCRS Price (ftUS)|proj=tmerc lat_0=44.5555555555556 lon_0=-90.4888888888889 k=1.0000649554 x_0=227990.854457709 y_0=0.0109728219456439 units=us-ft
8133|NAD83(HARN) / WISCRS Portage (m)|proj=lcc lat_1=44.4168239752778 lat_0=44.4168239752778 lon_0=-89.5 k_0=1.000039936 x_0=56388.1128 y_0=50022.1874
8134|NAD83(HARN) / WISCRS Portage (ftUS)|proj=lcc lat_1=44.4168239752778 lat_0=44.4168239752778 lon_0=-89.5 k_0=1.000039936 x_0=56388.1127762256 y_0=50022.1874523749 units=us-ft
8135|NAD83(HARN) / WISCRS Polk (m)|proj=tmerc lat_0=44.6611111111111 lon_0=-92.6333333333333 k=1.0000433849 x_0=141732.2823 y_0=0.0059
8136|NAD83(HARN) / WISCRS Polk (ftUS)|proj=tmerc lat_0=44.6611111111111 lon_0=-92.6333333333333 k=1.0000433849 x_0=141732.282245365 y_0=0.00579121158242317 units=us-ft
8137|NAD83(HARN) / WISCRS Pepin and Pierce (m)|proj=lcc lat_1=44.6361488719444 lat_0=44.6361488719444 lon_0=-92.2277777777778 k_0=1.0000362977 x_0=167640.3354 y_0=86033.0876
8138|NAD83(HARN) / WISCRS Pepin and Pierce (ftUS)|proj=lcc lat_1=44.6361488719444 lat_0=44.6361488719444 lon_0=-92.2277777777778 k_0=1.0000362977 x_0=167640.335280671 y_0=86033.0877317755 units=us-ft
8139|NAD83(HARN) / WISCRS Oneida (m)|proj=lcc lat_1=45.7042237702778 lat_0=45.7042237702778 lon_0=-89.5444444444444 k_0=1.0000686968 x_0=70104.1401 y_0=57588.0346
8140|NAD83(HARN) / WISCRS Oneida (ftUS)|proj=lcc lat_1=45.7042237702778 lat_0=45.7042237702778 lon_0=-89.5444444444444 k_0=1.0000686968 x_0=70104.1402082804 y_0=57588.0347472695 units=us-ft
8141|NAD83(HARN) / WISCRS Oconto (m)|proj=tmerc lat_0=44.3972222222222 lon_0=-87.9083333333333 k=1.0000236869 x_0=182880.3676 y_0=0.0033
8142|NAD83(HARN) / WISCRS Oconto (ftUS)|proj=tmerc lat_0=44.3972222222222 lon_0=-87.9083333333333 k=1.0000236869 x_0=182880.367589535 y_0=0.00335280670561341 units=us-ft
8143|NAD83(HARN) / WISCRS Monroe (m)|proj=lcc lat_1=44.0000739286111 lat_0=44.0000739286111 lon_0=-90.6416666666667 k_0=1.0000434122 x_0=204521.209 y_0=121923.9861
8144|NAD83(HARN) / WISCRS Monroe (ftUS)|proj=lcc lat_1=44.0000739286111 lat_0=44.0000739286111 lon_0=-90.6416666666667 k_0=1.0000434122 x_0=204521.209042418 y_0=121923.986182372 units=us-ft
8145|NAD83(HARN) / WISCRS Menominee (m)|proj=tmerc lat_0=44.7166666666667 lon_0=-88.4166666666667 k=1.0000362499 x_0=105461.0121 y_0=0.0029
8146|NAD83(HARN) / WISCRS Menominee (ftUS)|proj=tmerc lat_0=44.7166666666667 lon_0=-88.4166666666667 k=1.0000362499 x_0=105461.012141224 y_0=0.00304800609601219 units=us-ft
8147|NAD83(HARN) / WISCRS Marinette (m)|proj=tmerc lat_0=44.6916666666667 lon_0=-87.7111111111111 k=1.0000234982 x_0=238658.8794 y_0=0.0032
8148|NAD83(HARN) / WISCRS Marinette (ftUS)|proj=tmerc lat_0=44.6916666666667 lon_0=-87.7111111111111 k=1.0000234982 x_0=238658.879451359 y_0=0.00304800609601219 units=us-ft
8149|NAD83(HARN) / WISCRS Marathon (m)|proj=lcc lat_1=44.9009044236111 lat_0=44.9009044236111 lon_0=-89.77 k_0=1.000053289 x_0=74676.1493 y_0=55049.2669
8150|NAD83(HARN) / WISCRS Marathon (ftUS)|proj=lcc lat_1=44.9009044236111 lat_0=44.9009044236111 lon_0=-89.77 k_0=1.000053289 x_0=74676.1493522987 y_0=55049.2669545339 units=us-ft
8151|NAD83(HARN) / WISCRS Lincoln (m)|proj=tmerc lat_0=44.8444444444444 lon_0=-89.7333333333333 k=1.0000599003 x_0=116129.0323 y_0=0.0058
8152|NAD83(HARN) / WISCRS Lincoln (ftUS)|proj=tmerc lat_0=44.8444444444444 lon_0=-89.7333333333333 k=1.0000599003 x_0=116129.032258065 y_0=0.00579121158242317 units=us-ft
8153|NAD83(HARN) / WISCRS Langlade (m)|proj=lcc lat_1=45.1542371052778 lat_0=45.1542371052778 lon_0=-89.0333333333333 k_0=1.0000627024 x_0=198425.197 y_0=105279.7829
8154|NAD83(HARN) / WISCRS Langlade (ftUS)|proj=lcc lat_1=45.1542371052778 lat_0=45.1542371052778 lon_0=-89.0333333333333 k_0=1.0000627024 x_0=198425.196850394 y_0=105279.782880366 units=us-ft
8155|NAD83(HARN) / WISCRS La Crosse (m)|proj=tmerc lat_0=43.4511111111111 lon_0=-91.3166666666667 k=1.0000319985 x_0=130454.6598 y_0=0.0033
8156|NAD83(HARN) / WISCRS La Crosse (ftUS)|proj=tmerc lat_0=43.4511111111111 lon_0=-91.3166666666667 k=1.0000319985 x_0=130454.659690119 y_0=0.00335280670561341 units=us-ft
8157|NAD83(HARN) / WISCRS Kewaunee, Manitowoc and Sheboygan (m)|proj=tmerc lat_0=43.2666666666667 lon_0=-87.55 k=1.0000233704 x_0=79857.7614 y_0=0.0012
8158|NAD83(HARN) / WISCRS Kewaunee, Manitowoc and Sheboygan (ftUS)|proj=tmerc lat_0=43.2666666666667 lon_0=-87.55 k=1.0000233704 x_0=79857.7615443231 y_0=0.00121920243840488 units=us-ft
8159|NAD83(HARN) / WISCRS Kenosha, Milwaukee, Ozaukee and Racine (m)|proj=tmerc lat_0=42.2166666666667 lon_0=-87.8944444444444 k=1.0000260649 x_0=185928.3728 y_0=0.0009
8160|NAD83(HARN) / WISCRS Kenosha, Milwaukee, Ozaukee and Racine (ftUS)|proj=tmerc lat_0=42.2166666666667 lon_0=-87.8944444444444 k=1.0000260649 x_0=185928.372771146 y_0=0.000914401828803658 units=us-ft
8161|NAD83(HARN) / WISCRS Jackson (m)|proj=tmerc lat_0=44.2533351277778 lon_0=-90.8442965194444 k=1.0000353 x_0=27000 y_0=25000
8162|NAD83(HARN) / WISCRS Jackson (ftUS)|proj=tmerc lat_0=44.2533351277778 lon_0=-90.8442965194444 k=1.0000353 x_0=27000 y_0=24999.9998983998 units=us-ft
8163|NAD83(HARN) / WISCRS Iron (m)|proj=tmerc lat_0=45.4333333333333 lon_0=-90.2555555555556 k=1.0000677153 x_0=220980.4419 y_0=0.0085
8164|NAD83(HARN) / WISCRS Iron (ftUS)|proj=tmerc lat_0=45.4333333333333 lon_0=-90.2555555555556 k=1.0000677153 x_0=220980.441960884 y_0=0.00853441706883414 units=us-ft
8165|NAD83(HARN) / WISCRS Iowa (m)|proj=tmerc lat_0=42.5388888888889 lon_0=-90.1611111111111 k=1.0000394961 x_0=113081.0261 y_0=0.0045
8166|NAD83(HARN) / WISCRS Iowa (ftUS)|proj=tmerc lat_0=42.5388888888889 lon_0=-90.1611111111111 k=1.0000394961 x_0=113081.026162052 y_0=0.00457200914401829 units=us-ft
8167|NAD83(HARN) / WISCRS Green Lake and Marquette (m)|proj=lcc lat_1=43.8070001177778 lat_0=43.8070001177778 lon_0=-89.2416666666667 k_0=1.0000344057 x_0=150876.3018 y_0=79170.7795
8168|NAD83(HARN) / WISCRS Green Lake and Marquette (ftUS)|proj=lcc lat_1=43.8070001177778 lat_0=43.8070001177778 lon_0=-89.2416666666667 k_0=1.0000344057 x_0=150876.301752604 y_0=79170.7793751588 units=us-ft
8169|NAD83(HARN) / WISCRS Green and Lafayette (m)|proj=lcc lat_1=42.6375622769444 lat_0=42.6375622769444 lon_0=-89.8388888888889 k_0=1.0000390487 x_0=170078.7403 y_0=45830.2947
8170|NAD83(HARN) / WISCRS Green and Lafayette (ftUS)|proj=lcc lat_1=42.6375622769444 lat_0=42.6375622769444 lon_0=-89.8388888888889 k_0=1.0000390487 x_0=170078.74015748 y_0=45830.2948437897 units=us-ft
8171|NAD83(HARN) / WISCRS Grant (m)|proj=tmerc lat_0=41.4111111111111 lon_0=-90.8 k=1.0000349452 x_0=242316.4841 y_0=0.01
8172|NAD83(HARN) / WISCRS Grant (ftUS)|proj=tmerc lat_0=41.4111111111111 lon_0=-90.8 k=1.0000349452 x_0=242316.484023368 y_0=0.0100584201168402 units=us-ft
8173|NAD83(HARN) / WISCRS Forest (m)|proj=tmerc lat_0=44.0055555555556 lon_0=-88.6333333333333 k=1.0000673004 x_0=275844.5533 y_0=0.0157
8177|NAD83(HARN) / WISCRS Forest (ftUS)|proj=tmerc lat_0=44.0055555555556 lon_0=-88.6333333333333 k=1.0000673004 x_0=275844.553213106 y_0=0.0158496316992634 units=us-ft
8179|NAD83(HARN) / WISCRS Dunn (m)|proj=tmerc lat_0=44.4083333333333 lon_0=-91.8944444444444 k=1.0000410324 x_0=51816.104 y_0=0.003
8180|NAD83(HARN) / WISCRS Dunn (ftUS)|proj=tmerc lat_0=44.4083333333333 lon_0=-91.8944444444444 k=1.0000410324 x_0=51816.1039370079 y_0=0.00304800609601219 units=us-ft
8181|NAD83(HARN) / WISCRS Douglas (m)|proj=tmerc lat_0=45.8833333333333 lon_0=-91.9166666666667 k=1.0000385418 x_0=59131.3183 y_0=0.0041
8182|NAD83(HARN) / WISCRS Douglas (ftUS)|proj=tmerc lat_0=45.8833333333333 lon_0=-91.9166666666667 k=1.0000385418 x_0=59131.3182626365 y_0=0.00396240792481585 units=us-ft
8184|NAD83(HARN) / WISCRS Door (m)|proj=tmerc lat_0=44.4 lon_0=-87.2722222222222 k=1.0000187521 x_0=158801.1176 y_0=0.0023
8185|NAD83(HARN) / WISCRS Door (ftUS)|proj=tmerc lat_0=44.4 lon_0=-87.2722222222222 k=1.0000187521 x_0=158801.117602235 y_0=0.00243840487680975 units=us-ft
8187|NAD83(HARN) / WISCRS Dodge and Jefferson (m)|proj=tmerc lat_0=41.4722222222222 lon_0=-88.775 k=1.0000346418 x_0=263347.7263 y_0=0.0076
8189|NAD83(HARN) / WISCRS Dodge and Jefferson (ftUS)|proj=tmerc lat_0=41.4722222222222 lon_0=-88.775 k=1.0000346418 x_0=263347.726390653 y_0=0.00762001524003048 units=us-ft
8191|NAD83(HARN) / WISCRS Dane (m)|proj=lcc lat_1=43.0695160375 lat_0=43.0695160375 lon_0=-89.4222222222222 k_0=1.0000384786 x_0=247193.2944 y_0=146591.9896
8193|NAD83(HARN) / WISCRS Dane (ftUS)|proj=lcc lat_1=43.0695160375 lat_0=43.0695160375 lon_0=-89.4222222222222 k_0=1.0000384786 x_0=247193.294386589 y_0=146591.989636779 units=us-ft
8196|NAD83(HARN) / WISCRS Crawford (m)|proj=lcc lat_1=43.200055605 lat_0=43.200055605 lon_0=-90.9388888888889 k_0=1.0000349151 x_0=113690.6274 y_0=53703.1201
8197|NAD83(HARN) / WISCRS Crawford (ftUS)|proj=lcc lat_1=43.200055605 lat_0=43.200055605 lon_0=-90.9388888888889 k_0=1.0000349151 x_0=113690.627381255 y_0=53703.1202438405 units=us-ft
8198|NAD83(HARN) / WISCRS Columbia (m)|proj=lcc lat_1=43.4625466458333 lat_0=43.4625466458333 lon_0=-89.3944444444444 k_0=1.00003498 x_0=169164.3381 y_0=111569.6134
8200|NAD83(HARN) / WISCRS Columbia (ftUS)|proj=lcc lat_1=43.4625466458333 lat_0=43.4625466458333 lon_0=-89.3944444444444 k_0=1.00003498 x_0=169164.338023876 y_0=111569.613512827 units=us-ft
8201|NAD83(HARN) / WISCRS Clark (m)|proj=tmerc lat_0=43.6 lon_0=-90.7083333333333 k=1.0000463003 x_0=199949.1989 y_0=0.0086
8202|NAD83(HARN) / WISCRS Clark (ftUS)|proj=tmerc lat_0=43.6 lon_0=-90.7083333333333 k=1.0000463003 x_0=199949.198983998 y_0=0.00853441706883414 units=us-ft
8203|NAD83(HARN) / WISCRS Chippewa (m)|proj=lcc lat_1=44.9778568986111 lat_0=44.9778568986111 lon_0=-91.2944444444444 k_0=1.0000391127 x_0=60045.72 y_0=44091.4346
8204|NAD83(HARN) / WISCRS Chippewa (ftUS)|proj=lcc lat_1=44.9778568986111 lat_0=44.9778568986111 lon_0=-91.2944444444444 k_0=1.0000391127 x_0=60045.7200914402 y_0=44091.434493269 units=us-ft
8205|NAD83(HARN) / WISCRS Calumet, Fond du Lac, Outagamie and Winnebago (m)|proj=tmerc lat_0=42.7194444444444 lon_0=-88.5 k=1.0000286569 x_0=244754.8893 y_0=0.0049
8206|NAD83(HARN) / WISCRS Calumet, Fond du Lac, Outagamie and Winnebago (ftUS)|proj=tmerc lat_0=42.7194444444444 lon_0=-88.5 k=1.0000286569 x_0=244754.889204978 y_0=0.00487680975361951 units=us-ft
8207|NAD83(HARN) / WISCRS Burnett (m)|proj=lcc lat_1=45.8987148658333 lat_0=45.8987148658333 lon_0=-92.4577777777778 k_0=1.0000383841 x_0=64008.1276 y_0=59445.9043
8208|NAD83(HARN) / WISCRS Burnett (ftUS)|proj=lcc lat_1=45.8987148658333 lat_0=45.8987148658333 lon_0=-92.4577777777778 k_0=1.0000383841 x_0=64008.1277114554 y_0=59445.9041910084 units=us-ft
8209|NAD83(HARN) / WISCRS Buffalo (m)|proj=tmerc lat_0=43.4813888888889 lon_0=-91.7972222222222 k=1.0000382778 x_0=175260.3502 y_0=0.0048
8210|NAD83(HARN) / WISCRS Buffalo (ftUS)|proj=tmerc lat_0=43.4813888888889 lon_0=-91.7972222222222 k=1.0000382778 x_0=175260.3502159 y_0=0.00487680975361951 units=us-ft
8212|NAD83(HARN) / WISCRS Brown (m)|proj=tmerc lat_0=43 lon_0=-88 k=1.00002 x_0=31600 y_0=4600
8213|NAD83(HARN) / WISCRS Brown (ftUS)|proj=tmerc lat_0=43 lon_0=-88 k=1.00002 x_0=31599.9998983998 y_0=4599.9998983998 units=us-ft
8214|NAD83(HARN) / WISCRS Bayfield (m)|proj=lcc lat_1=46.6696483772222 lat_0=46.6696483772222 lon_0=-91.1527777777778 k_0=1.0000331195 x_0=228600.4575 y_0=148551.4837
8216|NAD83(HARN) / WISCRS Bayfield (ftUS)|proj=lcc lat_1=46.6696483772222 lat_0=46.6696483772222 lon_0=-91.1527777777778 k_0=1.0000331195 x_0=228600.457505715 y_0=148551.483566167 units=us-ft
8218|NAD83(HARN) / WISCRS Barron (m)|proj=tmerc lat_0=45.1333333333333 lon_0=-91.85 k=1.0000486665 x_0=93150 y_0=0.0029
8220|NAD83(HARN) / WISCRS Barron (ftUS)|proj=tmerc lat_0=45.1333333333333 lon_0=-91.85 k=1.0000486665 x_0=93150 y_0=0.00304800609601219 units=us-ft
8222|NAD83(HARN) / WISCRS Ashland (m)|proj=tmerc lat_0=45.7061111111111 lon_0=-90.6222222222222 k=1.0000495683 x_0=172821.9461 y_0=0.0017
8224|NAD83(HARN) / WISCRS Ashland (ftUS)|proj=tmerc lat_0=45.7061111111111 lon_0=-90.6222222222222 k=1.0000495683 x_0=172821.945948692 y_0=0.00182880365760732 units=us-ft
8225|NAD83(HARN) / WISCRS Adams and Juneau (m)|proj=tmerc lat_0=43.3666666666667 lon_0=-90 k=1.0000365285 x_0=147218.6942 y_0=0.0037
8226|NAD83(HARN) / WISCRS Adams and Juneau (ftUS)|proj=tmerc lat_0=43.3666666666667 lon_0=-90 k=1.0000365285 x_0=147218.694132588 y_0=0.00365760731521463 units=us-ft
26855|NAD83(HARN) / Maine East (ftUS)|=26847
26856|NAD83(HARN) / Maine West (ftUS)|=26848
26857|NAD83(HARN) / Minnesota North (ftUS)|=26849
26858|NAD83(HARN) / Minnesota Central (ftUS)|=26850
26859|NAD83(HARN) / Minnesota South (ftUS)|=26851
26860|NAD83(HARN) / Nebraska (ftUS)|=26852
26861|NAD83(HARN) / West Virginia North (ftUS)|=26853
26862|NAD83(HARN) / West Virginia South (ftUS)|=26854
@NAD83 (National Spatial Reference System 2007)
3465|NAD83(NSRS2007) / Alabama East|=26929
3466|NAD83(NSRS2007) / Alabama West|=26930
3467|NAD83(NSRS2007) / Alaska Albers|=3338
3468|NAD83(NSRS2007) / Alaska zone 1|=26931
3469|NAD83(NSRS2007) / Alaska zone 2|=26932
3470|NAD83(NSRS2007) / Alaska zone 3|=26933
3471|NAD83(NSRS2007) / Alaska zone 4|=26934
3472|NAD83(NSRS2007) / Alaska zone 5|=26935
3473|NAD83(NSRS2007) / Alaska zone 6|=26936
3474|NAD83(NSRS2007) / Alaska zone 7|=26937
3475|NAD83(NSRS2007) / Alaska zone 8|=26938
3476|NAD83(NSRS2007) / Alaska zone 9|=26939
3477|NAD83(NSRS2007) / Alaska zone 10|=26940
3478|NAD83(NSRS2007) / Arizona Central|=26949
3479|NAD83(NSRS2007) / Arizona Central (ft)|=2223
3480|NAD83(NSRS2007) / Arizona East|=26948
3481|NAD83(NSRS2007) / Arizona East (ft)|=2222
3482|NAD83(NSRS2007) / Arizona West|=26950
3483|NAD83(NSRS2007) / Arizona West (ft)|=2224
3484|NAD83(NSRS2007) / Arkansas North|=26951
3485|NAD83(NSRS2007) / Arkansas North (ftUS)|=3433
3486|NAD83(NSRS2007) / Arkansas South|=26952
3487|NAD83(NSRS2007) / Arkansas South (ftUS)|=3434
3488|NAD83(NSRS2007) / California Albers|=3310
3489|NAD83(NSRS2007) / California zone 1|=26941
3490|NAD83(NSRS2007) / California zone 1 (ftUS)|=2225
3491|NAD83(NSRS2007) / California zone 2|=26942
3492|NAD83(NSRS2007) / California zone 2 (ftUS)|=2226
3493|NAD83(NSRS2007) / California zone 3|=26943
3494|NAD83(NSRS2007) / California zone 3 (ftUS)|=2227
3495|NAD83(NSRS2007) / California zone 4|=26944
3496|NAD83(NSRS2007) / California zone 4 (ftUS)|=2228
3497|NAD83(NSRS2007) / California zone 5|=26945
3498|NAD83(NSRS2007) / California zone 5 (ftUS)|=2229
3499|NAD83(NSRS2007) / California zone 6|=26946
3500|NAD83(NSRS2007) / California zone 6 (ftUS)|=2230
3501|NAD83(NSRS2007) / Colorado Central|=26954
3502|NAD83(NSRS2007) / Colorado Central (ftUS)|=2232
3503|NAD83(NSRS2007) / Colorado North|=26953
3504|NAD83(NSRS2007) / Colorado North (ftUS)|=2231
3505|NAD83(NSRS2007) / Colorado South|=26955
3506|NAD83(NSRS2007) / Colorado South (ftUS)|=2233
3507|NAD83(NSRS2007) / Connecticut|=26956
3508|NAD83(NSRS2007) / Connecticut (ftUS)|=2234
3509|NAD83(NSRS2007) / Delaware|=26957
3510|NAD83(NSRS2007) / Delaware (ftUS)|=2235
3511|NAD83(NSRS2007) / Florida East|=26958
3512|NAD83(NSRS2007) / Florida East (ftUS)|=2236
3513|NAD83(NSRS2007) / Florida GDL Albers|=3086
3514|NAD83(NSRS2007) / Florida North|=26960
3515|NAD83(NSRS2007) / Florida North (ftUS)|=2238
3516|NAD83(NSRS2007) / Florida West|=26959
3517|NAD83(NSRS2007) / Florida West (ftUS)|=2237
3518|NAD83(NSRS2007) / Georgia East|=26966
3519|NAD83(NSRS2007) / Georgia East (ftUS)|=2239
3520|NAD83(NSRS2007) / Georgia West|=26967
3521|NAD83(NSRS2007) / Georgia West (ftUS)|=2240
3522|NAD83(NSRS2007) / Idaho Central|=26969
3523|NAD83(NSRS2007) / Idaho Central (ftUS)|=2242
3524|NAD83(NSRS2007) / Idaho East|=26968
3525|NAD83(NSRS2007) / Idaho East (ftUS)|=2241
3526|NAD83(NSRS2007) / Idaho West|=26970
3527|NAD83(NSRS2007) / Idaho West (ftUS)|=2243
3528|NAD83(NSRS2007) / Illinois East|=26971
3529|NAD83(NSRS2007) / Illinois East (ftUS)|=3435
3530|NAD83(NSRS2007) / Illinois West|=26972
3531|NAD83(NSRS2007) / Illinois West (ftUS)|=3436
3532|NAD83(NSRS2007) / Indiana East|=26973
3533|NAD83(NSRS2007) / Indiana East (ftUS)|=2965
3534|NAD83(NSRS2007) / Indiana West|=26974
3535|NAD83(NSRS2007) / Indiana West (ftUS)|=2966
3536|NAD83(NSRS2007) / Iowa North|=26975
3537|NAD83(NSRS2007) / Iowa North (ftUS)|=3417
3538|NAD83(NSRS2007) / Iowa South|=26976
3539|NAD83(NSRS2007) / Iowa South (ftUS)|=3418
3540|NAD83(NSRS2007) / Kansas North|=26977
3541|NAD83(NSRS2007) / Kansas North (ftUS)|=3419
3542|NAD83(NSRS2007) / Kansas South|=26978
3543|NAD83(NSRS2007) / Kansas South (ftUS)|=3420
3544|NAD83(NSRS2007) / Kentucky North|=2205
3545|NAD83(NSRS2007) / Kentucky North (ftUS)|=2246
3546|NAD83(NSRS2007) / Kentucky Single Zone|=3088
3547|NAD83(NSRS2007) / Kentucky Single Zone (ftUS)|=3089
3548|NAD83(NSRS2007) / Kentucky South|=26980
3549|NAD83(NSRS2007) / Kentucky South (ftUS)|=2247
3550|NAD83(NSRS2007) / Louisiana North|=26981
3551|NAD83(NSRS2007) / Louisiana North (ftUS)|=3451
3552|NAD83(NSRS2007) / Louisiana South|=26982
3553|NAD83(NSRS2007) / Louisiana South (ftUS)|=3452
3554|NAD83(NSRS2007) / Maine CS2000 Central|=3463
3555|NAD83(NSRS2007) / Maine CS2000 East|=3072
3556|NAD83(NSRS2007) / Maine CS2000 West|=3074
3557|NAD83(NSRS2007) / Maine East|=26983
3558|NAD83(NSRS2007) / Maine West|=26984
3559|NAD83(NSRS2007) / Maryland|=26985
3582|NAD83(NSRS2007) / Maryland (ftUS)|=2248
3583|NAD83(NSRS2007) / Massachusetts Island|=26987
3584|NAD83(NSRS2007) / Massachusetts Island (ftUS)|=2250
3585|NAD83(NSRS2007) / Massachusetts Mainland|=26986
3586|NAD83(NSRS2007) / Massachusetts Mainland (ftUS)|=2249
3587|NAD83(NSRS2007) / Michigan Central|=26989
3588|NAD83(NSRS2007) / Michigan Central (ft)|=2252
3589|NAD83(NSRS2007) / Michigan North|=26988
3590|NAD83(NSRS2007) / Michigan North (ft)|=2251
3591|NAD83(NSRS2007) / Michigan Oblique Mercator|=3078
3592|NAD83(NSRS2007) / Michigan South|=26990
3593|NAD83(NSRS2007) / Michigan South (ft)|=2253
3594|NAD83(NSRS2007) / Minnesota Central|=26992
3595|NAD83(NSRS2007) / Minnesota North|=26991
3596|NAD83(NSRS2007) / Minnesota South|=26993
3597|NAD83(NSRS2007) / Mississippi East|=26994
3598|NAD83(NSRS2007) / Mississippi East (ftUS)|=2254
3599|NAD83(NSRS2007) / Mississippi West|=26995
3600|NAD83(NSRS2007) / Mississippi West (ftUS)|=2255
3601|NAD83(NSRS2007) / Missouri Central|=26997
3602|NAD83(NSRS2007) / Missouri East|=26996
3603|NAD83(NSRS2007) / Missouri West|=26998
3604|NAD83(NSRS2007) / Montana|=32100
3605|NAD83(NSRS2007) / Montana (ft)|=2256
3606|NAD83(NSRS2007) / Nebraska|=32104
3607|NAD83(NSRS2007) / Nevada Central|=32108
3608|NAD83(NSRS2007) / Nevada Central (ftUS)|=3422
3609|NAD83(NSRS2007) / Nevada East|=32107
3610|NAD83(NSRS2007) / Nevada East (ftUS)|=3421
3611|NAD83(NSRS2007) / Nevada West|=32109
3612|NAD83(NSRS2007) / Nevada West (ftUS)|=3423
3613|NAD83(NSRS2007) / New Hampshire|=32110
3614|NAD83(NSRS2007) / New Hampshire (ftUS)|=3437
3615|NAD83(NSRS2007) / New Jersey|=32111
3616|NAD83(NSRS2007) / New Jersey (ftUS)|=2260
3617|NAD83(NSRS2007) / New Mexico Central|=32113
3618|NAD83(NSRS2007) / New Mexico Central (ftUS)|=2258
3619|NAD83(NSRS2007) / New Mexico East|=32112
3620|NAD83(NSRS2007) / New Mexico East (ftUS)|=2257
3621|NAD83(NSRS2007) / New Mexico West|=32114
3622|NAD83(NSRS2007) / New Mexico West (ftUS)|=2259
3623|NAD83(NSRS2007) / New York Central|=32116
3624|NAD83(NSRS2007) / New York Central (ftUS)|=2261
3625|NAD83(NSRS2007) / New York East|=32111
3626|NAD83(NSRS2007) / New York East (ftUS)|=2260
3627|NAD83(NSRS2007) / New York Long Island|=32118
3628|NAD83(NSRS2007) / New York Long Island (ftUS)|=2263
3629|NAD83(NSRS2007) / New York West|=32117
3630|NAD83(NSRS2007) / New York West (ftUS)|=2262
3631|NAD83(NSRS2007) / North Carolina|=32119
3632|NAD83(NSRS2007) / North Carolina (ftUS)|=2264
3633|NAD83(NSRS2007) / North Dakota North|=32120
3634|NAD83(NSRS2007) / North Dakota North (ft)|=2265
3635|NAD83(NSRS2007) / North Dakota South|=32121
3636|NAD83(NSRS2007) / North Dakota South (ft)|=2266
3637|NAD83(NSRS2007) / Ohio North|=32122
3638|NAD83(NSRS2007) / Ohio South|=32123
3639|NAD83(NSRS2007) / Oklahoma North|=32124
3640|NAD83(NSRS2007) / Oklahoma North (ftUS)|=2267
3641|NAD83(NSRS2007) / Oklahoma South|=32125
3642|NAD83(NSRS2007) / Oklahoma South (ftUS)|=2268
3643|NAD83(NSRS2007) / Oregon LCC (m)|=2991
3644|NAD83(NSRS2007) / Oregon GIC Lambert (ft)|=2992
3645|NAD83(NSRS2007) / Oregon North|=32126
3646|NAD83(NSRS2007) / Oregon North (ft)|=2269
3647|NAD83(NSRS2007) / Oregon South|=32127
3648|NAD83(NSRS2007) / Oregon South (ft)|=2270
3649|NAD83(NSRS2007) / Pennsylvania North|=32128
3650|NAD83(NSRS2007) / Pennsylvania North (ftUS)|=2271
3651|NAD83(NSRS2007) / Pennsylvania South|=32129
3652|NAD83(NSRS2007) / Pennsylvania South (ftUS)|=2272
3653|NAD83(NSRS2007) / Rhode Island|=32130
3654|NAD83(NSRS2007) / Rhode Island (ftUS)|=3438
3655|NAD83(NSRS2007) / South Carolina|=32133
3656|NAD83(NSRS2007) / South Carolina (ft)|=2273
3657|NAD83(NSRS2007) / South Dakota North|=32134
3658|NAD83(NSRS2007) / South Dakota North (ftUS)|=4457
3659|NAD83(NSRS2007) / South Dakota South|=32135
3660|NAD83(NSRS2007) / South Dakota South (ftUS)|=3455
3661|NAD83(NSRS2007) / Tennessee|=32136
3662|NAD83(NSRS2007) / Tennessee (ftUS)|=2274
3663|NAD83(NSRS2007) / Texas Central|=32139
3664|NAD83(NSRS2007) / Texas Central (ftUS)|=2277
3665|NAD83(NSRS2007) / Texas Centric Albers Equal Area|=3083
3666|NAD83(NSRS2007) / Texas Centric Lambert Conformal|=3082
3667|NAD83(NSRS2007) / Texas North|=32137
3668|NAD83(NSRS2007) / Texas North (ftUS)|=2275
3669|NAD83(NSRS2007) / Texas North Central|=32138
3670|NAD83(NSRS2007) / Texas North Central (ftUS)|=2276
3671|NAD83(NSRS2007) / Texas South|=32141
3672|NAD83(NSRS2007) / Texas South (ftUS)|=2279
3673|NAD83(NSRS2007) / Texas South Central|=32140
3674|NAD83(NSRS2007) / Texas South Central (ftUS)|=2278
3675|NAD83(NSRS2007) / Utah Central|=32143
3676|NAD83(NSRS2007) / Utah Central (ft)|=2281
3677|NAD83(NSRS2007) / Utah Central (ftUS)|=3566
3678|NAD83(NSRS2007) / Utah North|=32142
3679|NAD83(NSRS2007) / Utah North (ft)|=2280
3680|NAD83(NSRS2007) / Utah North (ftUS)|=3560
3681|NAD83(NSRS2007) / Utah South|=32144
3682|NAD83(NSRS2007) / Utah South (ft)|=2282
3683|NAD83(NSRS2007) / Utah South (ftUS)|=3567
3684|NAD83(NSRS2007) / Vermont|=32145
3685|NAD83(NSRS2007) / Virginia North|=32146
3686|NAD83(NSRS2007) / Virginia North (ftUS)|=2283
3687|NAD83(NSRS2007) / Virginia South|=32147
3688|NAD83(NSRS2007) / Virginia South (ftUS)|=2284
3689|NAD83(NSRS2007) / Washington North|=32148
3690|NAD83(NSRS2007) / Washington North (ftUS)|=2285
3691|NAD83(NSRS2007) / Washington South|=32149
3692|NAD83(NSRS2007) / Washington South (ftUS)|=2286
3693|NAD83(NSRS2007) / West Virginia North|=32150
3694|NAD83(NSRS2007) / West Virginia South|=32151
3695|NAD83(NSRS2007) / Wisconsin Central|=32153
3696|NAD83(NSRS2007) / Wisconsin Central (ftUS)|=2288
3697|NAD83(NSRS2007) / Wisconsin North|=32152
3698|NAD83(NSRS2007) / Wisconsin North (ftUS)|=2287
3699|NAD83(NSRS2007) / Wisconsin South|=32154
3700|NAD83(NSRS2007) / Wisconsin South (ftUS)|=2289
3701|NAD83(NSRS2007) / Wisconsin Transverse Mercator|=3070
3702|NAD83(NSRS2007) / Wyoming East|=32155
3703|NAD83(NSRS2007) / Wyoming East Central|=32156
3704|NAD83(NSRS2007) / Wyoming West Central|=32157
3705|NAD83(NSRS2007) / Wyoming West|=32158
3706|NAD83(NSRS2007) / UTM zone 59N|=3372
3707|NAD83(NSRS2007) / UTM zone 60N|=3373
3708|NAD83(NSRS2007) / UTM zone 1N|proj=utm zone=1
3709|NAD83(NSRS2007) / UTM zone 2N|proj=utm zone=2
3710|NAD83(NSRS2007) / UTM zone 3N|proj=utm zone=3
3711|NAD83(NSRS2007) / UTM zone 4N|=3750
3712|NAD83(NSRS2007) / UTM zone 5N|=3751
3713|NAD83(NSRS2007) / UTM zone 6N|proj=utm zone=6
3714|NAD83(NSRS2007) / UTM zone 7N|proj=utm zone=7
3715|NAD83(NSRS2007) / UTM zone 8N|proj=utm zone=8
3716|NAD83(NSRS2007) / UTM zone 9N|proj=utm zone=9
3717|NAD83(NSRS2007) / UTM zone 10N|=3740
3718|NAD83(NSRS2007) / UTM zone 11N|=3741
3719|NAD83(NSRS2007) / UTM zone 12N|=3742
3720|NAD83(NSRS2007) / UTM zone 13N|=3743
3721|NAD83(NSRS2007) / UTM zone 14N|=3744
3722|NAD83(NSRS2007) / UTM zone 15N|=3745
3723|NAD83(NSRS2007) / UTM zone 16N|=3746
3724|NAD83(NSRS2007) / UTM zone 17N|=3747
3725|NAD83(NSRS2007) / UTM zone 18N|=3748
3726|NAD83(NSRS2007) / UTM zone 19N|=3749
3728|NAD83(NSRS2007) / Ohio North (ftUS)|=3734
3729|NAD83(NSRS2007) / Ohio South (ftUS)|=3735
3730|NAD83(NSRS2007) / Wyoming East (ftUS)|=3736
3731|NAD83(NSRS2007) / Wyoming East Central (ftUS)|=3737
3732|NAD83(NSRS2007) / Wyoming West Central (ftUS)|=3738
3733|NAD83(NSRS2007) / Wyoming West (ftUS)|=3739
3816|NAD83(NSRS2007) / Mississippi TM|=3814
3970|NAD83(NSRS2007) / Virginia Lambert|=3968
4437|NAD83(NSRS2007) / Puerto Rico and Virgin Is.|=32161
4759|NAD83(NSRS2007)|=4269
5072|NAD83(NSRS2007) / Conus Albers|=5070
5655|NAD83(NSRS2007) / Vermont (ftUS)|=5646
6094|NAD83(NSRS2007) / EPSG Arctic zone 5-29|proj=lcc lat_0=72.0250091944445 lon_0=-163 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=29500000 y_0=5500000
6095|NAD83(NSRS2007) / EPSG Arctic zone 5-31|proj=lcc lat_0=72.0250091944445 lon_0=-147 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=31500000 y_0=5500000
6096|NAD83(NSRS2007) / EPSG Arctic zone 6-14|proj=lcc lat_0=68.6874755555556 lon_0=-165 lat_1=70.3333333333333 lat_2=67 x_0=14500000 y_0=6500000
6097|NAD83(NSRS2007) / EPSG Arctic zone 6-16|proj=lcc lat_0=68.6874755555556 lon_0=-147 lat_1=70.3333333333333 lat_2=67 x_0=16500000 y_0=6500000
26863|NAD83(NSRS2007) / Maine East (ftUS)|=26847
26864|NAD83(NSRS2007) / Maine West (ftUS)|=26848
26865|NAD83(NSRS2007) / Minnesota North (ftUS)|=26849
26866|NAD83(NSRS2007) / Minnesota Central (ftUS)|=26850
26867|NAD83(NSRS2007) / Minnesota South (ftUS)|=26851
26868|NAD83(NSRS2007) / Nebraska (ftUS)|=26852
26869|NAD83(NSRS2007) / West Virginia North (ftUS)|=26853
26870|NAD83(NSRS2007) / West Virginia South (ftUS)|=26854
@NAD83 (Continuously Operating Reference Station 1996)
6307|NAD83(CORS96) / Puerto Rico and Virgin Is.|=32161
6783|NAD83(CORS96)|=4269
6784|NAD83(CORS96) / Oregon Baker zone (m)|proj=tmerc lat_0=44.5 lon_0=-117.833333333333 k=1.00016 x_0=40000 y_0=0
6785|NAD83(CORS96) / Oregon Baker zone (ft)|proj=tmerc lat_0=44.5 lon_0=-117.833333333333 k=1.00016 x_0=39999.99999984 y_0=0 units=ft
6788|NAD83(CORS96) / Oregon Bend-Klamath Falls zone (m)|proj=tmerc lat_0=41.75 lon_0=-121.75 k=1.0002 x_0=80000 y_0=0
6789|NAD83(CORS96) / Oregon Bend-Klamath Falls zone (ft)|proj=tmerc lat_0=41.75 lon_0=-121.75 k=1.0002 x_0=79999.99999968 y_0=0 units=ft
6792|NAD83(CORS96) / Oregon Bend-Redmond-Prineville zone (m)|proj=lcc lat_1=44.6666666666667 lat_0=44.6666666666667 lon_0=-121.25 k_0=1.00012 x_0=80000 y_0=130000
6793|NAD83(CORS96) / Oregon Bend-Redmond-Prineville zone (ft)|proj=lcc lat_1=44.6666666666667 lat_0=44.6666666666667 lon_0=-121.25 k_0=1.00012 x_0=79999.99999968 y_0=130000.00001472 units=ft
6796|NAD83(CORS96) / Oregon Bend-Burns zone (m)|proj=lcc lat_1=43.6666666666667 lat_0=43.6666666666667 lon_0=-119.75 k_0=1.0002 x_0=120000 y_0=60000
6797|NAD83(CORS96) / Oregon Bend-Burns zone (ft)|proj=lcc lat_1=43.6666666666667 lat_0=43.6666666666667 lon_0=-119.75 k_0=1.0002 x_0=119999.99999952 y_0=59999.99999976 units=ft
6800|NAD83(CORS96) / Oregon Canyonville-Grants Pass zone (m)|proj=tmerc lat_0=42.5 lon_0=-123.333333333333 k=1.00007 x_0=40000 y_0=0
6801|NAD83(CORS96) / Oregon Canyonville-Grants Pass zone (ft)|proj=tmerc lat_0=42.5 lon_0=-123.333333333333 k=1.00007 x_0=39999.99999984 y_0=0 units=ft
6804|NAD83(CORS96) / Oregon Columbia River East zone (m)|proj=lcc lat_1=45.6666666666667 lat_0=45.6666666666667 lon_0=-120.5 k_0=1.000008 x_0=150000 y_0=30000
6805|NAD83(CORS96) / Oregon Columbia River East zone (ft)|proj=lcc lat_1=45.6666666666667 lat_0=45.6666666666667 lon_0=-120.5 k_0=1.000008 x_0=150000.00001464 y_0=30000.00001512 units=ft
6808|NAD83(CORS96) / Oregon Columbia River West zone (m)|proj=omerc no_uoff lat_0=45.9166666666667 lonc=-123 alpha=295 gamma=295 k=1 x_0=7000000 y_0=-3000000
6809|NAD83(CORS96) / Oregon Columbia River West zone (ft)|proj=omerc no_uoff lat_0=45.9166666666667 lonc=-123 alpha=295 gamma=295 k=1 x_0=7000000.00000248 y_0=-2999999.999988 units=ft
6812|NAD83(CORS96) / Oregon Cottage Grove-Canyonville zone (m)|proj=tmerc lat_0=42.8333333333333 lon_0=-123.333333333333 k=1.000023 x_0=50000 y_0=0
6813|NAD83(CORS96) / Oregon Cottage Grove-Canyonville zone (ft)|proj=tmerc lat_0=42.8333333333333 lon_0=-123.333333333333 k=1.000023 x_0=50000.00001504 y_0=0 units=ft
6816|NAD83(CORS96) / Oregon Dufur-Madras zone (m)|proj=tmerc lat_0=44.5 lon_0=-121 k=1.00011 x_0=80000 y_0=0
6817|NAD83(CORS96) / Oregon Dufur-Madras zone (ft)|proj=tmerc lat_0=44.5 lon_0=-121 k=1.00011 x_0=79999.99999968 y_0=0 units=ft
6820|NAD83(CORS96) / Oregon Eugene zone (m)|proj=tmerc lat_0=43.75 lon_0=-123.166666666667 k=1.000015 x_0=50000 y_0=0
6821|NAD83(CORS96) / Oregon Eugene zone (ft)|proj=tmerc lat_0=43.75 lon_0=-123.166666666667 k=1.000015 x_0=50000.00001504 y_0=0 units=ft
6824|NAD83(CORS96) / Oregon Grants Pass-Ashland zone (m)|proj=tmerc lat_0=41.75 lon_0=-123.333333333333 k=1.000043 x_0=50000 y_0=0
6825|NAD83(CORS96) / Oregon Grants Pass-Ashland zone (ft)|proj=tmerc lat_0=41.75 lon_0=-123.333333333333 k=1.000043 x_0=50000.00001504 y_0=0 units=ft
6828|NAD83(CORS96) / Oregon Gresham-Warm Springs zone (m)|proj=tmerc lat_0=45 lon_0=-122.333333333333 k=1.00005 x_0=10000 y_0=0
6829|NAD83(CORS96) / Oregon Gresham-Warm Springs zone (ft)|proj=tmerc lat_0=45 lon_0=-122.333333333333 k=1.00005 x_0=10000.0000152 y_0=0 units=ft
6832|NAD83(CORS96) / Oregon La Grande zone (m)|proj=tmerc lat_0=45 lon_0=-118 k=1.00013 x_0=40000 y_0=0
6833|NAD83(CORS96) / Oregon La Grande zone (ft)|proj=tmerc lat_0=45 lon_0=-118 k=1.00013 x_0=39999.99999984 y_0=0 units=ft
6836|NAD83(CORS96) / Oregon Ontario zone (m)|proj=tmerc lat_0=43.25 lon_0=-117 k=1.0001 x_0=80000 y_0=0
6837|NAD83(CORS96) / Oregon Ontario zone (ft)|proj=tmerc lat_0=43.25 lon_0=-117 k=1.0001 x_0=79999.99999968 y_0=0 units=ft
6840|NAD83(CORS96) / Oregon Coast zone (m)|proj=omerc no_uoff lat_0=44.75 lonc=-124.05 alpha=5 gamma=5 k=1 x_0=-300000 y_0=-4600000
6841|NAD83(CORS96) / Oregon Coast zone (ft)|proj=omerc no_uoff lat_0=44.75 lonc=-124.05 alpha=5 gamma=5 k=1 x_0=-299999.9999988 y_0=-4600000.00001208 units=ft
6844|NAD83(CORS96) / Oregon Pendleton zone (m)|proj=tmerc lat_0=45.25 lon_0=-119.166666666667 k=1.000045 x_0=60000 y_0=0
6845|NAD83(CORS96) / Oregon Pendleton zone (ft)|proj=tmerc lat_0=45.25 lon_0=-119.166666666667 k=1.000045 x_0=59999.99999976 y_0=0 units=ft
6848|NAD83(CORS96) / Oregon Pendleton-La Grande zone (m)|proj=tmerc lat_0=45.0833333333333 lon_0=-118.333333333333 k=1.000175 x_0=30000 y_0=0
6849|NAD83(CORS96) / Oregon Pendleton-La Grande zone (ft)|proj=tmerc lat_0=45.0833333333333 lon_0=-118.333333333333 k=1.000175 x_0=30000.00001512 y_0=0 units=ft
6852|NAD83(CORS96) / Oregon Portland zone (m)|proj=lcc lat_1=45.5 lat_0=45.5 lon_0=-122.75 k_0=1.000002 x_0=100000 y_0=50000
6853|NAD83(CORS96) / Oregon Portland zone (ft)|proj=lcc lat_1=45.5 lat_0=45.5 lon_0=-122.75 k_0=1.000002 x_0=99999.9999996 y_0=50000.00001504 units=ft
6856|NAD83(CORS96) / Oregon Salem zone (m)|proj=tmerc lat_0=44.3333333333333 lon_0=-123.083333333333 k=1.00001 x_0=50000 y_0=0
6857|NAD83(CORS96) / Oregon Salem zone (ft)|proj=tmerc lat_0=44.3333333333333 lon_0=-123.083333333333 k=1.00001 x_0=50000.00001504 y_0=0 units=ft
6860|NAD83(CORS96) / Oregon Santiam Pass zone (m)|proj=tmerc lat_0=44.0833333333333 lon_0=-122.5 k=1.000155 x_0=0 y_0=0
6861|NAD83(CORS96) / Oregon Santiam Pass zone (ft)|proj=tmerc lat_0=44.0833333333333 lon_0=-122.5 k=1.000155 x_0=0 y_0=0 units=ft
6867|NAD83(CORS96) / Oregon LCC (m)|=2991
6868|NAD83(CORS96) / Oregon GIC Lambert (ft)|=2992
6884|NAD83(CORS96) / Oregon North|=32126
6885|NAD83(CORS96) / Oregon North (ft)|=2269
6886|NAD83(CORS96) / Oregon South|=32127
6887|NAD83(CORS96) / Oregon South (ft)|=2270
@NAD83 (National Spatial Reference System 2011)
6318|NAD83(2011)|=4269
6328|NAD83(2011) / UTM zone 59N|=3372
6329|NAD83(2011) / UTM zone 60N|=3373
6330|NAD83(2011) / UTM zone 1N|=3708
6331|NAD83(2011) / UTM zone 2N|=3709
6332|NAD83(2011) / UTM zone 3N|=3710
6333|NAD83(2011) / UTM zone 4N|=3750
6334|NAD83(2011) / UTM zone 5N|=3751
6335|NAD83(2011) / UTM zone 6N|=3713
6336|NAD83(2011) / UTM zone 7N|=3714
6337|NAD83(2011) / UTM zone 8N|=3715
6338|NAD83(2011) / UTM zone 9N|=3716
6339|NAD83(2011) / UTM zone 10N|=3740
6340|NAD83(2011) / UTM zone 11N|=3741
6341|NAD83(2011) / UTM zone 12N|=3742
6342|NAD83(2011) / UTM zone 13N|=3743
6343|NAD83(2011) / UTM zone 14N|=3744
6344|NAD83(2011) / UTM zone 15N|=3745
6345|NAD83(2011) / UTM zone 16N|=3746
6346|NAD83(2011) / UTM zone 17N|=3747
6347|NAD83(2011) / UTM zone 18N|=3748
6348|NAD83(2011) / UTM zone 19N|=3749
6350|NAD83(2011) / Conus Albers|=5070
6351|NAD83(2011) / EPSG Arctic zone 5-29|=6094
6352|NAD83(2011) / EPSG Arctic zone 5-31|=6095
6353|NAD83(2011) / EPSG Arctic zone 6-14|=6096
6354|NAD83(2011) / EPSG Arctic zone 6-16|=6097
6355|NAD83(2011) / Alabama East|=26929
6356|NAD83(2011) / Alabama West|=26930
6393|NAD83(2011) / Alaska Albers|=3338
6394|NAD83(2011) / Alaska zone 1|=26931
6395|NAD83(2011) / Alaska zone 2|=26932
6396|NAD83(2011) / Alaska zone 3|=26933
6397|NAD83(2011) / Alaska zone 4|=26934
6398|NAD83(2011) / Alaska zone 5|=26935
6399|NAD83(2011) / Alaska zone 6|=26936
6400|NAD83(2011) / Alaska zone 7|=26937
6401|NAD83(2011) / Alaska zone 8|=26938
6402|NAD83(2011) / Alaska zone 9|=26939
6403|NAD83(2011) / Alaska zone 10|=26940
6404|NAD83(2011) / Arizona Central|=26949
6405|NAD83(2011) / Arizona Central (ft)|=2223
6406|NAD83(2011) / Arizona East|=26948
6407|NAD83(2011) / Arizona East (ft)|=2222
6408|NAD83(2011) / Arizona West|=26950
6409|NAD83(2011) / Arizona West (ft)|=2224
6410|NAD83(2011) / Arkansas North|=26951
6411|NAD83(2011) / Arkansas North (ftUS)|=3433
6412|NAD83(2011) / Arkansas South|=26952
6413|NAD83(2011) / Arkansas South (ftUS)|=3434
6414|NAD83(2011) / California Albers|=3310
6415|NAD83(2011) / California zone 1|=26941
6416|NAD83(2011) / California zone 1 (ftUS)|=2225
6417|NAD83(2011) / California zone 2|=26942
6418|NAD83(2011) / California zone 2 (ftUS)|=2226
6419|NAD83(2011) / California zone 3|=26943
6420|NAD83(2011) / California zone 3 (ftUS)|=2227
6421|NAD83(2011) / California zone 4|=26944
6422|NAD83(2011) / California zone 4 (ftUS)|=2228
6423|NAD83(2011) / California zone 5|=26945
6424|NAD83(2011) / California zone 5 (ftUS)|=2229
6425|NAD83(2011) / California zone 6|=26946
6426|NAD83(2011) / California zone 6 (ftUS)|=2230
6427|NAD83(2011) / Colorado Central|=26954
6428|NAD83(2011) / Colorado Central (ftUS)|=2232
6429|NAD83(2011) / Colorado North|=26953
6430|NAD83(2011) / Colorado North (ftUS)|=2231
6431|NAD83(2011) / Colorado South|=26955
6432|NAD83(2011) / Colorado South (ftUS)|=2233
6433|NAD83(2011) / Connecticut|=26956
6434|NAD83(2011) / Connecticut (ftUS)|=2234
6435|NAD83(2011) / Delaware|=26957
6436|NAD83(2011) / Delaware (ftUS)|=2235
6437|NAD83(2011) / Florida East|=26958
6438|NAD83(2011) / Florida East (ftUS)|=2236
6439|NAD83(2011) / Florida GDL Albers|=3086
6440|NAD83(2011) / Florida North|=26960
6441|NAD83(2011) / Florida North (ftUS)|=2238
6442|NAD83(2011) / Florida West|=26959
6443|NAD83(2011) / Florida West (ftUS)|=2237
6444|NAD83(2011) / Georgia East|=26966
6445|NAD83(2011) / Georgia East (ftUS)|=2239
6446|NAD83(2011) / Georgia West|=26967
6447|NAD83(2011) / Georgia West (ftUS)|=2240
6448|NAD83(2011) / Idaho Central|=26969
6449|NAD83(2011) / Idaho Central (ftUS)|=2242
6450|NAD83(2011) / Idaho East|=26968
6451|NAD83(2011) / Idaho East (ftUS)|=2241
6452|NAD83(2011) / Idaho West|=26970
6453|NAD83(2011) / Idaho West (ftUS)|=2243
6454|NAD83(2011) / Illinois East|=26971
6455|NAD83(2011) / Illinois East (ftUS)|=3435
6456|NAD83(2011) / Illinois West|=26972
6457|NAD83(2011) / Illinois West (ftUS)|=3436
6458|NAD83(2011) / Indiana East|=26973
6459|NAD83(2011) / Indiana East (ftUS)|=2965
6460|NAD83(2011) / Indiana West|=26974
6461|NAD83(2011) / Indiana West (ftUS)|=2966
6462|NAD83(2011) / Iowa North|=26975
6463|NAD83(2011) / Iowa North (ftUS)|=3417
6464|NAD83(2011) / Iowa South|=26976
6465|NAD83(2011) / Iowa South (ftUS)|=3418
6466|NAD83(2011) / Kansas North|=26977
6467|NAD83(2011) / Kansas North (ftUS)|=3419
6468|NAD83(2011) / Kansas South|=26978
6469|NAD83(2011) / Kansas South (ftUS)|=3420
6470|NAD83(2011) / Kentucky North|=2205
6471|NAD83(2011) / Kentucky North (ftUS)|=2246
6472|NAD83(2011) / Kentucky Single Zone|=3088
6473|NAD83(2011) / Kentucky Single Zone (ftUS)|=3089
6474|NAD83(2011) / Kentucky South|=26980
6475|NAD83(2011) / Kentucky South (ftUS)|=2247
6476|NAD83(2011) / Louisiana North|=26981
6477|NAD83(2011) / Louisiana North (ftUS)|=3451
6478|NAD83(2011) / Louisiana South|=26982
6479|NAD83(2011) / Louisiana South (ftUS)|=3452
6480|NAD83(2011) / Maine CS2000 Central|=3463
6481|NAD83(2011) / Maine CS2000 East|=3072
6482|NAD83(2011) / Maine CS2000 West|=3074
6483|NAD83(2011) / Maine East|=26983
6484|NAD83(2011) / Maine East (ftUS)|=26847
6485|NAD83(2011) / Maine West|=26984
6486|NAD83(2011) / Maine West (ftUS)|=26848
6487|NAD83(2011) / Maryland|=26985
6488|NAD83(2011) / Maryland (ftUS)|=2248
6489|NAD83(2011) / Massachusetts Island|=26987
6490|NAD83(2011) / Massachusetts Island (ftUS)|=2250
6491|NAD83(2011) / Massachusetts Mainland|=26986
6492|NAD83(2011) / Massachusetts Mainland (ftUS)|=2249
6493|NAD83(2011) / Michigan Central|=26989
6494|NAD83(2011) / Michigan Central (ft)|=2252
6495|NAD83(2011) / Michigan North|=26988
6496|NAD83(2011) / Michigan North (ft)|=2251
6497|NAD83(2011) / Michigan Oblique Mercator|=3078
6498|NAD83(2011) / Michigan South|=26990
6499|NAD83(2011) / Michigan South (ft)|=2253
6500|NAD83(2011) / Minnesota Central|=26992
6501|NAD83(2011) / Minnesota Central (ftUS)|=26850
6502|NAD83(2011) / Minnesota North|=26991
6503|NAD83(2011) / Minnesota North (ftUS)|=26849
6504|NAD83(2011) / Minnesota South|=26993
6505|NAD83(2011) / Minnesota South (ftUS)|=26851
6506|NAD83(2011) / Mississippi East|=26994
6507|NAD83(2011) / Mississippi East (ftUS)|=2254
6508|NAD83(2011) / Mississippi TM|=3814
6509|NAD83(2011) / Mississippi West|=26995
6510|NAD83(2011) / Mississippi West (ftUS)|=2255
6511|NAD83(2011) / Missouri Central|=26997
6512|NAD83(2011) / Missouri East|=26996
6513|NAD83(2011) / Missouri West|=26998
6514|NAD83(2011) / Montana|=32100
6515|NAD83(2011) / Montana (ft)|=2256
6516|NAD83(2011) / Nebraska|=32104
6518|NAD83(2011) / Nevada Central|=32108
6519|NAD83(2011) / Nevada Central (ftUS)|=3422
6520|NAD83(2011) / Nevada East|=32107
6521|NAD83(2011) / Nevada East (ftUS)|=3421
6522|NAD83(2011) / Nevada West|=32109
6523|NAD83(2011) / Nevada West (ftUS)|=3423
6524|NAD83(2011) / New Hampshire|=32110
6525|NAD83(2011) / New Hampshire (ftUS)|=3437
6526|NAD83(2011) / New Jersey|=32111
6527|NAD83(2011) / New Jersey (ftUS)|=2260
6528|NAD83(2011) / New Mexico Central|=32113
6529|NAD83(2011) / New Mexico Central (ftUS)|=2258
6530|NAD83(2011) / New Mexico East|=32112
6531|NAD83(2011) / New Mexico East (ftUS)|=2257
6532|NAD83(2011) / New Mexico West|=32114
6533|NAD83(2011) / New Mexico West (ftUS)|=2259
6534|NAD83(2011) / New York Central|=32116
6535|NAD83(2011) / New York Central (ftUS)|=2261
6536|NAD83(2011) / New York East|=32111
6537|NAD83(2011) / New York East (ftUS)|=2260
6538|NAD83(2011) / New York Long Island|=32118
6539|NAD83(2011) / New York Long Island (ftUS)|=2263
6540|NAD83(2011) / New York West|=32117
6541|NAD83(2011) / New York West (ftUS)|=2262
6542|NAD83(2011) / North Carolina|=32119
6543|NAD83(2011) / North Carolina (ftUS)|=2264
6544|NAD83(2011) / North Dakota North|=32120
6545|NAD83(2011) / North Dakota North (ft)|=2265
6546|NAD83(2011) / North Dakota South|=32121
6547|NAD83(2011) / North Dakota South (ft)|=2266
6548|NAD83(2011) / Ohio North|=32122
6549|NAD83(2011) / Ohio North (ftUS)|=3734
6550|NAD83(2011) / Ohio South|=32123
6551|NAD83(2011) / Ohio South (ftUS)|=3735
6552|NAD83(2011) / Oklahoma North|=32124
6553|NAD83(2011) / Oklahoma North (ftUS)|=2267
6554|NAD83(2011) / Oklahoma South|=32125
6555|NAD83(2011) / Oklahoma South (ftUS)|=2268
6556|NAD83(2011) / Oregon LCC (m)|=2991
6557|NAD83(2011) / Oregon GIC Lambert (ft)|=2992
6558|NAD83(2011) / Oregon North|=32126
6559|NAD83(2011) / Oregon North (ft)|=2269
6560|NAD83(2011) / Oregon South|=32127
6561|NAD83(2011) / Oregon South (ft)|=2270
6562|NAD83(2011) / Pennsylvania North|=32128
6563|NAD83(2011) / Pennsylvania North (ftUS)|=2271
6564|NAD83(2011) / Pennsylvania South|=32129
6565|NAD83(2011) / Pennsylvania South (ftUS)|=2272
6566|NAD83(2011) / Puerto Rico and Virgin Is.|=32161
6567|NAD83(2011) / Rhode Island|=32130
6568|NAD83(2011) / Rhode Island (ftUS)|=3438
6569|NAD83(2011) / South Carolina|=32133
6570|NAD83(2011) / South Carolina (ft)|=2273
6571|NAD83(2011) / South Dakota North|=32134
6572|NAD83(2011) / South Dakota North (ftUS)|=4457
6573|NAD83(2011) / South Dakota South|=32135
6574|NAD83(2011) / South Dakota South (ftUS)|=3455
6575|NAD83(2011) / Tennessee|=32136
6576|NAD83(2011) / Tennessee (ftUS)|=2274
6577|NAD83(2011) / Texas Central|=32139
6578|NAD83(2011) / Texas Central (ftUS)|=2277
6579|NAD83(2011) / Texas Centric Albers Equal Area|=3083
6580|NAD83(2011) / Texas Centric Lambert Conformal|=3082
6581|NAD83(2011) / Texas North|=32137
6582|NAD83(2011) / Texas North (ftUS)|=2275
6583|NAD83(2011) / Texas North Central|=32138
6584|NAD83(2011) / Texas North Central (ftUS)|=2276
6585|NAD83(2011) / Texas South|=32141
6586|NAD83(2011) / Texas South (ftUS)|=2279
6587|NAD83(2011) / Texas South Central|=32140
6588|NAD83(2011) / Texas South Central (ftUS)|=2278
6589|NAD83(2011) / Vermont|=32145
6590|NAD83(2011) / Vermont (ftUS)|=5646
6591|NAD83(2011) / Virginia Lambert|=3968
6592|NAD83(2011) / Virginia North|=32146
6593|NAD83(2011) / Virginia North (ftUS)|=2283
6594|NAD83(2011) / Virginia South|=32147
6595|NAD83(2011) / Virginia South (ftUS)|=2284
6596|NAD83(2011) / Washington North|=32148
6597|NAD83(2011) / Washington North (ftUS)|=2285
6598|NAD83(2011) / Washington South|=32149
6599|NAD83(2011) / Washington South (ftUS)|=2286
6600|NAD83(2011) / West Virginia North|=32150
6601|NAD83(2011) / West Virginia North (ftUS)|=26853
6602|NAD83(2011) / West Virginia South|=32151
6603|NAD83(2011) / West Virginia South (ftUS)|=26854
6605|NAD83(2011) / Wisconsin Central (ftUS)|=2288
6606|NAD83(2011) / Wisconsin North|=32152
6607|NAD83(2011) / Wisconsin North (ftUS)|=2287
6608|NAD83(2011) / Wisconsin South|=32154
6609|NAD83(2011) / Wisconsin South (ftUS)|=2289
6610|NAD83(2011) / Wisconsin Transverse Mercator|=3070
6611|NAD83(2011) / Wyoming East|=32155
6612|NAD83(2011) / Wyoming East (ftUS)|=3736
6613|NAD83(2011) / Wyoming East Central|=32156
6614|NAD83(2011) / Wyoming East Central (ftUS)|=3737
6615|NAD83(2011) / Wyoming West|=32158
6616|NAD83(2011) / Wyoming West (ftUS)|=3739
6617|NAD83(2011) / Wyoming West Central|=32157
6618|NAD83(2011) / Wyoming West Central (ftUS)|=3738
6619|NAD83(2011) / Utah Central|=32143
6620|NAD83(2011) / Utah North|=32142
6621|NAD83(2011) / Utah South|=32144
6625|NAD83(2011) / Utah Central (ftUS)|=3566
6626|NAD83(2011) / Utah North (ftUS)|=3560
6627|NAD83(2011) / Utah South (ftUS)|=3567
6786|NAD83(2011) / Oregon Baker zone (m)|=6784
6787|NAD83(2011) / Oregon Baker zone (ft)|=6785
6790|NAD83(2011) / Oregon Bend-Klamath Falls zone (m)|=6788
6791|NAD83(2011) / Oregon Bend-Klamath Falls zone (ft)|=6789
6794|NAD83(2011) / Oregon Bend-Redmond-Prineville zone (m)|=6792
6795|NAD83(2011) / Oregon Bend-Redmond-Prineville zone (ft)|=6793
6798|NAD83(2011) / Oregon Bend-Burns zone (m)|=6796
6799|NAD83(2011) / Oregon Bend-Burns zone (ft)|=6797
6802|NAD83(2011) / Oregon Canyonville-Grants Pass zone (m)|=6800
6803|NAD83(2011) / Oregon Canyonville-Grants Pass zone (ft)|=6801
6806|NAD83(2011) / Oregon Columbia River East zone (m)|=6804
6807|NAD83(2011) / Oregon Columbia River East zone (ft)|=6805
6810|NAD83(2011) / Oregon Columbia River West zone (m)|=6808
6811|NAD83(2011) / Oregon Columbia River West zone (ft)|=6809
6814|NAD83(2011) / Oregon Cottage Grove-Canyonville zone (m)|=6812
6815|NAD83(2011) / Oregon Cottage Grove-Canyonville zone (ft)|=6813
6818|NAD83(2011) / Oregon Dufur-Madras zone (m)|=6816
6819|NAD83(2011) / Oregon Dufur-Madras zone (ft)|=6817
6822|NAD83(2011) / Oregon Eugene zone (m)|=6820
6823|NAD83(2011) / Oregon Eugene zone (ft)|=6821
6826|NAD83(2011) / Oregon Grants Pass-Ashland zone (m)|=6824
6827|NAD83(2011) / Oregon Grants Pass-Ashland zone (ft)|=6825
6830|NAD83(2011) / Oregon Gresham-Warm Springs zone (m)|=6828
6831|NAD83(2011) / Oregon Gresham-Warm Springs zone (ft)|=6829
6834|NAD83(2011) / Oregon La Grande zone (m)|=6832
6835|NAD83(2011) / Oregon La Grande zone (ft)|=6833
6838|NAD83(2011) / Oregon Ontario zone (m)|=6836
6839|NAD83(2011) / Oregon Ontario zone (ft)|=6837
6842|NAD83(2011) / Oregon Coast zone (m)|=6840
6843|NAD83(2011) / Oregon Coast zone (ft)|=6841
6846|NAD83(2011) / Oregon Pendleton zone (m)|=6844
6847|NAD83(2011) / Oregon Pendleton zone (ft)|=6845
6850|NAD83(2011) / Oregon Pendleton-La Grande zone (m)|=6848
6851|NAD83(2011) / Oregon Pendleton-La Grande zone (ft)|=6849
6854|NAD83(2011) / Oregon Portland zone (m)|=6852
6855|NAD83(2011) / Oregon Portland zone (ft)|=6853
6858|NAD83(2011) / Oregon Salem zone (m)|=6856
6859|NAD83(2011) / Oregon Salem zone (ft)|=6857
6862|NAD83(2011) / Oregon Santiam Pass zone (m)|=6860
6863|NAD83(2011) / Oregon Santiam Pass zone (ft)|=6861
6879|NAD83(2011) / Wisconsin Central|=32153
6880|NAD83(2011) / Nebraska (ftUS)|=26852
6924|NAD83(2011) / Kansas LCC|=6922
6925|NAD83(2011) / Kansas LCC (ftUS)|=6923
7057|NAD83(2011) / IaRCS zone 1|proj=lcc lat_1=43.2 lat_0=43.2 lon_0=-95.25 k_0=1.000052 x_0=3505207.01041402 y_0=2926085.8521717 units=us-ft
7058|NAD83(2011) / IaRCS zone 2|proj=lcc lat_1=43.1666666666667 lat_0=43.1666666666667 lon_0=-92.75 k_0=1.000043 x_0=3810007.62001524 y_0=2987045.97409195 units=us-ft
7059|NAD83(2011) / IaRCS zone 3|proj=tmerc lat_0=40.25 lon_0=-91.2 k=1.000035 x_0=4114808.22961646 y_0=2529845.05969012 units=us-ft
7060|NAD83(2011) / IaRCS zone 4|proj=lcc lat_1=42.5333333333333 lat_0=42.5333333333333 lon_0=-94.8333333333333 k_0=1.000045 x_0=4419608.83921768 y_0=2621285.24257049 units=us-ft
7061|NAD83(2011) / IaRCS zone 5|proj=lcc lat_1=42.65 lat_0=42.65 lon_0=-92.25 k_0=1.000032 x_0=4724409.4488189 y_0=2712725.42545085 units=us-ft
7062|NAD83(2011) / IaRCS zone 6|proj=tmerc lat_0=40.25 lon_0=-95.7333333333333 k=1.000039 x_0=5029210.05842012 y_0=2011684.02336805 units=us-ft
7063|NAD83(2011) / IaRCS zone 7|proj=tmerc lat_0=40.25 lon_0=-94.6333333333333 k=1.000045 x_0=5334010.66802134 y_0=2072644.14528829 units=us-ft
7064|NAD83(2011) / IaRCS zone 8|proj=tmerc lat_0=40.25 lon_0=-93.7166666666667 k=1.000033 x_0=5638811.27762256 y_0=2133604.26720853 units=us-ft
7065|NAD83(2011) / IaRCS zone 9|proj=tmerc lat_0=40.25 lon_0=-92.8166666666667 k=1.000027 x_0=5943611.88722378 y_0=2194564.38912878 units=us-ft
7066|NAD83(2011) / IaRCS zone 10|proj=lcc lat_1=41.8333333333333 lat_0=41.8333333333333 lon_0=-91.6666666666667 k_0=1.00002 x_0=6248412.49682499 y_0=2438404.87680975 units=us-ft
7067|NAD83(2011) / IaRCS zone 11|proj=tmerc lat_0=40.25 lon_0=-90.5333333333333 k=1.000027 x_0=6553213.10642621 y_0=2316484.63296927 units=us-ft
7068|NAD83(2011) / IaRCS zone 12|proj=lcc lat_1=40.9166666666667 lat_0=40.9166666666667 lon_0=-93.75 k_0=1.000037 x_0=6858013.71602743 y_0=1889763.77952756 units=us-ft
7069|NAD83(2011) / IaRCS zone 13|proj=tmerc lat_0=40.25 lon_0=-91.9166666666667 k=1.00002 x_0=7162814.32562865 y_0=1950723.9014478 units=us-ft
7070|NAD83(2011) / IaRCS zone 14|proj=tmerc lat_0=40.25 lon_0=-91.25 k=1.000018 x_0=7467614.93522987 y_0=1889763.77952756 units=us-ft
7109|NAD83(2011) / RMTCRS St Mary (m)|proj=tmerc lat_0=48.5 lon_0=-112.5 k=1.00016 x_0=150000 y_0=0
7110|NAD83(2011) / RMTCRS Blackfeet (m)|proj=tmerc lat_0=48 lon_0=-112.5 k=1.00019 x_0=100000 y_0=0
7111|NAD83(2011) / RMTCRS Milk River (m)|proj=lcc lat_1=48.5 lat_0=48.5 lon_0=-111 k_0=1.000145 x_0=150000 y_0=200000
7112|NAD83(2011) / RMTCRS Fort Belknap (m)|proj=lcc lat_1=48.5 lat_0=48.5 lon_0=-108.5 k_0=1.00012 x_0=200000 y_0=150000
7113|NAD83(2011) / RMTCRS Fort Peck Assiniboine (m)|proj=lcc lat_1=48.3333333333333 lat_0=48.3333333333333 lon_0=-105.5 k_0=1.00012 x_0=200000 y_0=100000
7114|NAD83(2011) / RMTCRS Fort Peck Sioux (m)|proj=lcc lat_1=48.3333333333333 lat_0=48.3333333333333 lon_0=-105.5 k_0=1.00009 x_0=100000 y_0=50000
7115|NAD83(2011) / RMTCRS Crow (m)|proj=tmerc lat_0=44.75 lon_0=-107.75 k=1.000148 x_0=200000 y_0=0
7116|NAD83(2011) / RMTCRS Bobcat (m)|proj=lcc lat_1=46.25 lat_0=46.25 lon_0=-111.25 k_0=1.000185 x_0=100000 y_0=100000
7117|NAD83(2011) / RMTCRS Billings (m)|proj=lcc lat_1=45.7833333333333 lat_0=45.7833333333333 lon_0=-108.416666666667 k_0=1.0001515 x_0=200000 y_0=50000
7118|NAD83(2011) / RMTCRS Wind River (m)|proj=tmerc lat_0=42.6666666666667 lon_0=-108.333333333333 k=1.00024 x_0=100000 y_0=0
7119|NAD83(2011) / RMTCRS St Mary (ft)|proj=tmerc lat_0=48.5 lon_0=-112.5 k=1.00016 x_0=150000.00001464 y_0=0 units=ft
7120|NAD83(2011) / RMTCRS Blackfeet (ft)|proj=tmerc lat_0=48 lon_0=-112.5 k=1.00019 x_0=99999.9999996 y_0=0 units=ft
7121|NAD83(2011) / RMTCRS Milk River (ft)|proj=lcc lat_1=48.5 lat_0=48.5 lon_0=-111 k_0=1.000145 x_0=150000.00001464 y_0=199999.9999992 units=ft
7122|NAD83(2011) / RMTCRS Fort Belknap (ft)|proj=lcc lat_1=48.5 lat_0=48.5 lon_0=-108.5 k_0=1.00012 x_0=199999.9999992 y_0=150000.00001464 units=ft
7123|NAD83(2011) / RMTCRS Fort Peck Assiniboine (ft)|proj=lcc lat_1=48.3333333333333 lat_0=48.3333333333333 lon_0=-105.5 k_0=1.00012 x_0=199999.9999992 y_0=99999.9999996 units=ft
7124|NAD83(2011) / RMTCRS Fort Peck Sioux (ft)|proj=lcc lat_1=48.3333333333333 lat_0=48.3333333333333 lon_0=-105.5 k_0=1.00009 x_0=99999.9999996 y_0=49999.99971024 units=ft
7125|NAD83(2011) / RMTCRS Crow (ft)|proj=tmerc lat_0=44.75 lon_0=-107.75 k=1.000148 x_0=199999.9999992 y_0=0 units=ft
7126|NAD83(2011) / RMTCRS Bobcat (ft)|proj=lcc lat_1=46.25 lat_0=46.25 lon_0=-111.25 k_0=1.000185 x_0=99999.9999996 y_0=99999.9999996 units=ft
7127|NAD83(2011) / RMTCRS Billings (ft)|proj=lcc lat_1=45.7833333333333 lat_0=45.7833333333333 lon_0=-108.416666666667 k_0=1.0001515 x_0=199999.9999992 y_0=50000.00001504 units=ft
7128|NAD83(2011) / RMTCRS Wind River (ftUS)|proj=tmerc lat_0=42.6666666666667 lon_0=-108.333333333333 k=1.00024 x_0=99999.99998984 y_0=0 units=us-ft
7131|NAD83(2011) / San Francisco CS13|proj=tmerc lat_0=37.75 lon_0=-122.45 k=1.000007 x_0=48000 y_0=24000
7132|NAD83(2011) / San Francisco CS13 (ftUS)|proj=tmerc lat_0=37.75 lon_0=-122.45 k=1.000007 x_0=48000 y_0=24000 units=us-ft
7257|NAD83(2011) / InGCS Adams (m)|proj=tmerc lat_0=40.55 lon_0=-84.95 k=1.000034 x_0=240000 y_0=36000
7258|NAD83(2011) / InGCS Adams (ftUS)|proj=tmerc lat_0=40.55 lon_0=-84.95 k=1.000034 x_0=240000 y_0=36000 units=us-ft
7259|NAD83(2011) / InGCS Allen (m)|proj=tmerc lat_0=40.9 lon_0=-85.05 k=1.000031 x_0=240000 y_0=36000
7260|NAD83(2011) / InGCS Allen (ftUS)|proj=tmerc lat_0=40.9 lon_0=-85.05 k=1.000031 x_0=240000 y_0=36000 units=us-ft
7261|NAD83(2011) / InGCS Bartholomew (m)|proj=tmerc lat_0=39 lon_0=-85.85 k=1.000026 x_0=240000 y_0=36000
7262|NAD83(2011) / InGCS Bartholomew (ftUS)|proj=tmerc lat_0=39 lon_0=-85.85 k=1.000026 x_0=240000 y_0=36000 units=us-ft
7263|NAD83(2011) / InGCS Benton (m)|proj=tmerc lat_0=40.45 lon_0=-87.3 k=1.000029 x_0=240000 y_0=36000
7264|NAD83(2011) / InGCS Benton (ftUS)|proj=tmerc lat_0=40.45 lon_0=-87.3 k=1.000029 x_0=240000 y_0=36000 units=us-ft
7265|NAD83(2011) / InGCS Blackford-Delaware (m)|proj=tmerc lat_0=40.05 lon_0=-85.4 k=1.000038 x_0=240000 y_0=36000
7266|NAD83(2011) / InGCS Blackford-Delaware (ftUS)|proj=tmerc lat_0=40.05 lon_0=-85.4 k=1.000038 x_0=240000 y_0=36000 units=us-ft
7267|NAD83(2011) / InGCS Boone-Hendricks (m)|proj=tmerc lat_0=39.6 lon_0=-86.5 k=1.000036 x_0=240000 y_0=36000
7268|NAD83(2011) / InGCS Boone-Hendricks (ftUS)|proj=tmerc lat_0=39.6 lon_0=-86.5 k=1.000036 x_0=240000 y_0=36000 units=us-ft
7269|NAD83(2011) / InGCS Brown (m)|proj=tmerc lat_0=39 lon_0=-86.3 k=1.00003 x_0=240000 y_0=36000
7270|NAD83(2011) / InGCS Brown (ftUS)|proj=tmerc lat_0=39 lon_0=-86.3 k=1.00003 x_0=240000 y_0=36000 units=us-ft
7271|NAD83(2011) / InGCS Carroll (m)|proj=tmerc lat_0=40.4 lon_0=-86.65 k=1.000026 x_0=240000 y_0=36000
7272|NAD83(2011) / InGCS Carroll (ftUS)|proj=tmerc lat_0=40.4 lon_0=-86.65 k=1.000026 x_0=240000 y_0=36000 units=us-ft
7273|NAD83(2011) / InGCS Cass (m)|proj=tmerc lat_0=40.55 lon_0=-86.4 k=1.000028 x_0=240000 y_0=36000
7274|NAD83(2011) / InGCS Cass (ftUS)|proj=tmerc lat_0=40.55 lon_0=-86.4 k=1.000028 x_0=240000 y_0=36000 units=us-ft
7275|NAD83(2011) / InGCS Clark-Floyd-Scott (m)|proj=tmerc lat_0=38.15 lon_0=-85.6 k=1.000021 x_0=240000 y_0=36000
7276|NAD83(2011) / InGCS Clark-Floyd-Scott (ftUS)|proj=tmerc lat_0=38.15 lon_0=-85.6 k=1.000021 x_0=240000 y_0=36000 units=us-ft
7277|NAD83(2011) / InGCS Clay (m)|proj=tmerc lat_0=39.15 lon_0=-87.15 k=1.000024 x_0=240000 y_0=36000
7278|NAD83(2011) / InGCS Clay (ftUS)|proj=tmerc lat_0=39.15 lon_0=-87.15 k=1.000024 x_0=240000 y_0=36000 units=us-ft
7279|NAD83(2011) / InGCS Clinton (m)|proj=tmerc lat_0=40.15 lon_0=-86.6 k=1.000032 x_0=240000 y_0=36000
7280|NAD83(2011) / InGCS Clinton (ftUS)|proj=tmerc lat_0=40.15 lon_0=-86.6 k=1.000032 x_0=240000 y_0=36000 units=us-ft
7281|NAD83(2011) / InGCS Crawford-Lawrence-Orange (m)|proj=tmerc lat_0=38.1 lon_0=-86.5 k=1.000025 x_0=240000 y_0=36000
7282|NAD83(2011) / InGCS Crawford-Lawrence-Orange (ftUS)|proj=tmerc lat_0=38.1 lon_0=-86.5 k=1.000025 x_0=240000 y_0=36000 units=us-ft
7283|NAD83(2011) / InGCS Daviess-Greene (m)|proj=tmerc lat_0=38.45 lon_0=-87.1 k=1.000018 x_0=240000 y_0=36000
7284|NAD83(2011) / InGCS Daviess-Greene (ftUS)|proj=tmerc lat_0=38.45 lon_0=-87.1 k=1.000018 x_0=240000 y_0=36000 units=us-ft
7285|NAD83(2011) / InGCS Dearborn-Ohio-Switzerland (m)|proj=tmerc lat_0=38.65 lon_0=-84.9 k=1.000029 x_0=240000 y_0=36000
7286|NAD83(2011) / InGCS Dearborn-Ohio-Switzerland (ftUS)|proj=tmerc lat_0=38.65 lon_0=-84.9 k=1.000029 x_0=240000 y_0=36000 units=us-ft
7287|NAD83(2011) / InGCS Decatur-Rush (m)|proj=tmerc lat_0=39.1 lon_0=-85.65 k=1.000036 x_0=240000 y_0=36000
7288|NAD83(2011) / InGCS Decatur-Rush (ftUS)|proj=tmerc lat_0=39.1 lon_0=-85.65 k=1.000036 x_0=240000 y_0=36000 units=us-ft
7289|NAD83(2011) / InGCS DeKalb (m)|proj=tmerc lat_0=41.25 lon_0=-84.95 k=1.000036 x_0=240000 y_0=36000
7290|NAD83(2011) / InGCS DeKalb (ftUS)|proj=tmerc lat_0=41.25 lon_0=-84.95 k=1.000036 x_0=240000 y_0=36000 units=us-ft
7291|NAD83(2011) / InGCS Dubois-Martin (m)|proj=tmerc lat_0=38.2 lon_0=-86.95 k=1.00002 x_0=240000 y_0=36000
7292|NAD83(2011) / InGCS Dubois-Martin (ftUS)|proj=tmerc lat_0=38.2 lon_0=-86.95 k=1.00002 x_0=240000 y_0=36000 units=us-ft
7293|NAD83(2011) / InGCS Elkhart-Kosciusko-Wabash (m)|proj=tmerc lat_0=40.65 lon_0=-85.85 k=1.000033 x_0=240000 y_0=36000
7294|NAD83(2011) / InGCS Elkhart-Kosciusko-Wabash (ftUS)|proj=tmerc lat_0=40.65 lon_0=-85.85 k=1.000033 x_0=240000 y_0=36000 units=us-ft
7295|NAD83(2011) / InGCS Fayette-Franklin-Union (m)|proj=tmerc lat_0=39.25 lon_0=-85.05 k=1.000038 x_0=240000 y_0=36000
7296|NAD83(2011) / InGCS Fayette-Franklin-Union (ftUS)|proj=tmerc lat_0=39.25 lon_0=-85.05 k=1.000038 x_0=240000 y_0=36000 units=us-ft
7297|NAD83(2011) / InGCS Fountain-Warren (m)|proj=tmerc lat_0=39.95 lon_0=-87.3 k=1.000025 x_0=240000 y_0=36000
7298|NAD83(2011) / InGCS Fountain-Warren (ftUS)|proj=tmerc lat_0=39.95 lon_0=-87.3 k=1.000025 x_0=240000 y_0=36000 units=us-ft
7299|NAD83(2011) / InGCS Fulton-Marshall-St. Joseph (m)|proj=tmerc lat_0=40.9 lon_0=-86.3 k=1.000031 x_0=240000 y_0=36000
7300|NAD83(2011) / InGCS Fulton-Marshall-St. Joseph (ftUS)|proj=tmerc lat_0=40.9 lon_0=-86.3 k=1.000031 x_0=240000 y_0=36000 units=us-ft
7301|NAD83(2011) / InGCS Gibson (m)|proj=tmerc lat_0=38.15 lon_0=-87.65 k=1.000013 x_0=240000 y_0=36000
7302|NAD83(2011) / InGCS Gibson (ftUS)|proj=tmerc lat_0=38.15 lon_0=-87.65 k=1.000013 x_0=240000 y_0=36000 units=us-ft
7303|NAD83(2011) / InGCS Grant (m)|proj=tmerc lat_0=40.35 lon_0=-85.7 k=1.000034 x_0=240000 y_0=36000
7304|NAD83(2011) / InGCS Grant (ftUS)|proj=tmerc lat_0=40.35 lon_0=-85.7 k=1.000034 x_0=240000 y_0=36000 units=us-ft
7305|NAD83(2011) / InGCS Hamilton-Tipton (m)|proj=tmerc lat_0=39.9 lon_0=-86 k=1.000034 x_0=240000 y_0=36000
7306|NAD83(2011) / InGCS Hamilton-Tipton (ftUS)|proj=tmerc lat_0=39.9 lon_0=-86 k=1.000034 x_0=240000 y_0=36000 units=us-ft
7307|NAD83(2011) / InGCS Hancock-Madison (m)|proj=tmerc lat_0=39.65 lon_0=-85.8 k=1.000036 x_0=240000 y_0=36000
7308|NAD83(2011) / InGCS Hancock-Madison (ftUS)|proj=tmerc lat_0=39.65 lon_0=-85.8 k=1.000036 x_0=240000 y_0=36000 units=us-ft
7309|NAD83(2011) / InGCS Harrison-Washington (m)|proj=tmerc lat_0=37.95 lon_0=-86.15 k=1.000027 x_0=240000 y_0=36000
7310|NAD83(2011) / InGCS Harrison-Washington (ftUS)|proj=tmerc lat_0=37.95 lon_0=-86.15 k=1.000027 x_0=240000 y_0=36000 units=us-ft
7311|NAD83(2011) / InGCS Henry (m)|proj=tmerc lat_0=39.75 lon_0=-85.45 k=1.000043 x_0=240000 y_0=36000
7312|NAD83(2011) / InGCS Henry (ftUS)|proj=tmerc lat_0=39.75 lon_0=-85.45 k=1.000043 x_0=240000 y_0=36000 units=us-ft
7313|NAD83(2011) / InGCS Howard-Miami (m)|proj=tmerc lat_0=40.35 lon_0=-86.15 k=1.000031 x_0=240000 y_0=36000
7314|NAD83(2011) / InGCS Howard-Miami (ftUS)|proj=tmerc lat_0=40.35 lon_0=-86.15 k=1.000031 x_0=240000 y_0=36000 units=us-ft
7315|NAD83(2011) / InGCS Huntington-Whitley (m)|proj=tmerc lat_0=40.65 lon_0=-85.5 k=1.000034 x_0=240000 y_0=36000
7316|NAD83(2011) / InGCS Huntington-Whitley (ftUS)|proj=tmerc lat_0=40.65 lon_0=-85.5 k=1.000034 x_0=240000 y_0=36000 units=us-ft
7317|NAD83(2011) / InGCS Jackson (m)|proj=tmerc lat_0=38.7 lon_0=-85.95 k=1.000022 x_0=240000 y_0=36000
7318|NAD83(2011) / InGCS Jackson (ftUS)|proj=tmerc lat_0=38.7 lon_0=-85.95 k=1.000022 x_0=240000 y_0=36000 units=us-ft
7319|NAD83(2011) / InGCS Jasper-Porter (m)|proj=tmerc lat_0=40.7 lon_0=-87.1 k=1.000027 x_0=240000 y_0=36000
7320|NAD83(2011) / InGCS Jasper-Porter (ftUS)|proj=tmerc lat_0=40.7 lon_0=-87.1 k=1.000027 x_0=240000 y_0=36000 units=us-ft
7321|NAD83(2011) / InGCS Jay (m)|proj=tmerc lat_0=40.3 lon_0=-85 k=1.000038 x_0=240000 y_0=36000
7322|NAD83(2011) / InGCS Jay (ftUS)|proj=tmerc lat_0=40.3 lon_0=-85 k=1.000038 x_0=240000 y_0=36000 units=us-ft
7323|NAD83(2011) / InGCS Jefferson (m)|proj=tmerc lat_0=38.55 lon_0=-85.35 k=1.000028 x_0=240000 y_0=36000
7324|NAD83(2011) / InGCS Jefferson (ftUS)|proj=tmerc lat_0=38.55 lon_0=-85.35 k=1.000028 x_0=240000 y_0=36000 units=us-ft
7325|NAD83(2011) / InGCS Jennings (m)|proj=tmerc lat_0=38.8 lon_0=-85.8 k=1.000025 x_0=240000 y_0=36000
7326|NAD83(2011) / InGCS Jennings (ftUS)|proj=tmerc lat_0=38.8 lon_0=-85.8 k=1.000025 x_0=240000 y_0=36000 units=us-ft
7327|NAD83(2011) / InGCS Johnson-Marion (m)|proj=tmerc lat_0=39.3 lon_0=-86.15 k=1.000031 x_0=240000 y_0=36000
7328|NAD83(2011) / InGCS Johnson-Marion (ftUS)|proj=tmerc lat_0=39.3 lon_0=-86.15 k=1.000031 x_0=240000 y_0=36000 units=us-ft
7329|NAD83(2011) / InGCS Knox (m)|proj=tmerc lat_0=38.4 lon_0=-87.45 k=1.000015 x_0=240000 y_0=36000
7330|NAD83(2011) / InGCS Knox (ftUS)|proj=tmerc lat_0=38.4 lon_0=-87.45 k=1.000015 x_0=240000 y_0=36000 units=us-ft
7331|NAD83(2011) / InGCS LaGrange-Noble (m)|proj=tmerc lat_0=41.25 lon_0=-85.45 k=1.000037 x_0=240000 y_0=36000
7332|NAD83(2011) / InGCS LaGrange-Noble (ftUS)|proj=tmerc lat_0=41.25 lon_0=-85.45 k=1.000037 x_0=240000 y_0=36000 units=us-ft
7333|NAD83(2011) / InGCS Lake-Newton (m)|proj=tmerc lat_0=40.7 lon_0=-87.4 k=1.000026 x_0=240000 y_0=36000
7334|NAD83(2011) / InGCS Lake-Newton (ftUS)|proj=tmerc lat_0=40.7 lon_0=-87.4 k=1.000026 x_0=240000 y_0=36000 units=us-ft
7335|NAD83(2011) / InGCS LaPorte-Pulaski-Starke (m)|proj=tmerc lat_0=40.9 lon_0=-86.75 k=1.000027 x_0=240000 y_0=36000
7336|NAD83(2011) / InGCS LaPorte-Pulaski-Starke (ftUS)|proj=tmerc lat_0=40.9 lon_0=-86.75 k=1.000027 x_0=240000 y_0=36000 units=us-ft
7337|NAD83(2011) / InGCS Monroe-Morgan (m)|proj=tmerc lat_0=38.95 lon_0=-86.5 k=1.000028 x_0=240000 y_0=36000
7338|NAD83(2011) / InGCS Monroe-Morgan (ftUS)|proj=tmerc lat_0=38.95 lon_0=-86.5 k=1.000028 x_0=240000 y_0=36000 units=us-ft
7339|NAD83(2011) / InGCS Montgomery-Putnam (m)|proj=tmerc lat_0=39.45 lon_0=-86.95 k=1.000031 x_0=240000 y_0=36000
7340|NAD83(2011) / InGCS Montgomery-Putnam (ftUS)|proj=tmerc lat_0=39.45 lon_0=-86.95 k=1.000031 x_0=240000 y_0=36000 units=us-ft
7341|NAD83(2011) / InGCS Owen (m)|proj=tmerc lat_0=39.15 lon_0=-86.9 k=1.000026 x_0=240000 y_0=36000
7342|NAD83(2011) / InGCS Owen (ftUS)|proj=tmerc lat_0=39.15 lon_0=-86.9 k=1.000026 x_0=240000 y_0=36000 units=us-ft
7343|NAD83(2011) / InGCS Parke-Vermillion (m)|proj=tmerc lat_0=39.6 lon_0=-87.35 k=1.000022 x_0=240000 y_0=36000
7344|NAD83(2011) / InGCS Parke-Vermillion (ftUS)|proj=tmerc lat_0=39.6 lon_0=-87.35 k=1.000022 x_0=240000 y_0=36000 units=us-ft
7345|NAD83(2011) / InGCS Perry (m)|proj=tmerc lat_0=37.8 lon_0=-86.7 k=1.00002 x_0=240000 y_0=36000
7346|NAD83(2011) / InGCS Perry (ftUS)|proj=tmerc lat_0=37.8 lon_0=-86.7 k=1.00002 x_0=240000 y_0=36000 units=us-ft
7347|NAD83(2011) / InGCS Pike-Warrick (m)|proj=tmerc lat_0=37.85 lon_0=-87.3 k=1.000015 x_0=240000 y_0=36000
7348|NAD83(2011) / InGCS Pike-Warrick (ftUS)|proj=tmerc lat_0=37.85 lon_0=-87.3 k=1.000015 x_0=240000 y_0=36000 units=us-ft
7349|NAD83(2011) / InGCS Posey (m)|proj=tmerc lat_0=37.75 lon_0=-87.95 k=1.000013 x_0=240000 y_0=36000
7350|NAD83(2011) / InGCS Posey (ftUS)|proj=tmerc lat_0=37.75 lon_0=-87.95 k=1.000013 x_0=240000 y_0=36000 units=us-ft
7351|NAD83(2011) / InGCS Randolph-Wayne (m)|proj=tmerc lat_0=39.7 lon_0=-85.05 k=1.000044 x_0=240000 y_0=36000
7352|NAD83(2011) / InGCS Randolph-Wayne (ftUS)|proj=tmerc lat_0=39.7 lon_0=-85.05 k=1.000044 x_0=240000 y_0=36000 units=us-ft
7353|NAD83(2011) / InGCS Ripley (m)|proj=tmerc lat_0=38.9 lon_0=-85.3 k=1.000038 x_0=240000 y_0=36000
7354|NAD83(2011) / InGCS Ripley (ftUS)|proj=tmerc lat_0=38.9 lon_0=-85.3 k=1.000038 x_0=240000 y_0=36000 units=us-ft
7355|NAD83(2011) / InGCS Shelby (m)|proj=tmerc lat_0=39.3 lon_0=-85.9 k=1.00003 x_0=240000 y_0=36000
7356|NAD83(2011) / InGCS Shelby (ftUS)|proj=tmerc lat_0=39.3 lon_0=-85.9 k=1.00003 x_0=240000 y_0=36000 units=us-ft
7357|NAD83(2011) / InGCS Spencer (m)|proj=tmerc lat_0=37.75 lon_0=-87.05 k=1.000014 x_0=240000 y_0=36000
7358|NAD83(2011) / InGCS Spencer (ftUS)|proj=tmerc lat_0=37.75 lon_0=-87.05 k=1.000014 x_0=240000 y_0=36000 units=us-ft
7359|NAD83(2011) / InGCS Steuben (m)|proj=tmerc lat_0=41.5 lon_0=-85 k=1.000041 x_0=240000 y_0=36000
7360|NAD83(2011) / InGCS Steuben (ftUS)|proj=tmerc lat_0=41.5 lon_0=-85 k=1.000041 x_0=240000 y_0=36000 units=us-ft
7361|NAD83(2011) / InGCS Sullivan (m)|proj=tmerc lat_0=38.9 lon_0=-87.5 k=1.000017 x_0=240000 y_0=36000
7362|NAD83(2011) / InGCS Sullivan (ftUS)|proj=tmerc lat_0=38.9 lon_0=-87.5 k=1.000017 x_0=240000 y_0=36000 units=us-ft
7363|NAD83(2011) / InGCS Tippecanoe-White (m)|proj=tmerc lat_0=40.2 lon_0=-86.9 k=1.000026 x_0=240000 y_0=36000
7364|NAD83(2011) / InGCS Tippecanoe-White (ftUS)|proj=tmerc lat_0=40.2 lon_0=-86.9 k=1.000026 x_0=240000 y_0=36000 units=us-ft
7365|NAD83(2011) / InGCS Vanderburgh (m)|proj=tmerc lat_0=37.8 lon_0=-87.55 k=1.000015 x_0=240000 y_0=36000
7366|NAD83(2011) / InGCS Vanderburgh (ftUS)|proj=tmerc lat_0=37.8 lon_0=-87.55 k=1.000015 x_0=240000 y_0=36000 units=us-ft
7367|NAD83(2011) / InGCS Vigo (m)|proj=tmerc lat_0=39.25 lon_0=-87.45 k=1.00002 x_0=240000 y_0=36000
7368|NAD83(2011) / InGCS Vigo (ftUS)|proj=tmerc lat_0=39.25 lon_0=-87.45 k=1.00002 x_0=240000 y_0=36000 units=us-ft
7369|NAD83(2011) / InGCS Wells (m)|proj=tmerc lat_0=40.55 lon_0=-85.25 k=1.000034 x_0=240000 y_0=36000
7370|NAD83(2011) / InGCS Wells (ftUS)|proj=tmerc lat_0=40.55 lon_0=-85.25 k=1.000034 x_0=240000 y_0=36000 units=us-ft
7528|NAD83(2011) / WISCRS Adams and Juneau (m)|=8225
7529|NAD83(2011) / WISCRS Ashland (m)|=8222
7530|NAD83(2011) / WISCRS Barron (m)|=8218
7531|NAD83(2011) / WISCRS Bayfield (m)|=8214
7532|NAD83(2011) / WISCRS Brown (m)|=8212
7533|NAD83(2011) / WISCRS Buffalo (m)|=8209
7534|NAD83(2011) / WISCRS Burnett (m)|=8207
7535|NAD83(2011) / WISCRS Calumet, Fond du Lac, Outagamie and Winnebago (m)|=8205
7536|NAD83(2011) / WISCRS Chippewa (m)|=8203
7537|NAD83(2011) / WISCRS Clark (m)|=8201
7538|NAD83(2011) / WISCRS Columbia (m)|=8198
7539|NAD83(2011) / WISCRS Crawford (m)|=8196
7540|NAD83(2011) / WISCRS Dane (m)|=8191
7541|NAD83(2011) / WISCRS Dodge and Jefferson (m)|=8187
7542|NAD83(2011) / WISCRS Door (m)|=8184
7543|NAD83(2011) / WISCRS Douglas (m)|=8181
7544|NAD83(2011) / WISCRS Dunn (m)|=8179
7545|NAD83(2011) / WISCRS Eau Claire (m)|=8092
7546|NAD83(2011) / WISCRS Florence (m)|=8090
7547|NAD83(2011) / WISCRS Forest (m)|=8173
7548|NAD83(2011) / WISCRS Grant (m)|=8171
7549|NAD83(2011) / WISCRS Green and Lafayette (m)|=8169
7550|NAD83(2011) / WISCRS Green Lake and Marquette (m)|=8167
7551|NAD83(2011) / WISCRS Iowa (m)|=8165
7552|NAD83(2011) / WISCRS Iron (m)|=8163
7553|NAD83(2011) / WISCRS Jackson (m)|=8161
7554|NAD83(2011) / WISCRS Kenosha, Milwaukee, Ozaukee and Racine (m)|=8159
7555|NAD83(2011) / WISCRS Kewaunee, Manitowoc and Sheboygan (m)|=8157
7556|NAD83(2011) / WISCRS La Crosse (m)|=8155
7557|NAD83(2011) / WISCRS Langlade (m)|=8153
7558|NAD83(2011) / WISCRS Lincoln (m)|=8151
7559|NAD83(2011) / WISCRS Marathon (m)|=8149
7560|NAD83(2011) / WISCRS Marinette (m)|=8147
7561|NAD83(2011) / WISCRS Menominee (m)|=8145
7562|NAD83(2011) / WISCRS Monroe (m)|=8143
7563|NAD83(2011) / WISCRS Oconto (m)|=8141
7564|NAD83(2011) / WISCRS Oneida (m)|=8139
7565|NAD83(2011) / WISCRS Pepin and Pierce (m)|=8137
7566|NAD83(2011) / WISCRS Polk (m)|=8135
7567|NAD83(2011) / WISCRS Portage (m)|=8133
7568|NAD83(2011) / WISCRS Price (m)|=8131
7569|NAD83(2011) / WISCRS Richland (m)|=8129
7570|NAD83(2011) / WISCRS Rock (m)|=8127
7571|NAD83(2011) / WISCRS Rusk (m)|=8125
7572|NAD83(2011) / WISCRS Sauk (m)|=8123
7573|NAD83(2011) / WISCRS Sawyer (m)|=8121
7574|NAD83(2011) / WISCRS Shawano (m)|=8119
7575|NAD83(2011) / WISCRS St. Croix (m)|=8117
7576|NAD83(2011) / WISCRS Taylor (m)|=8115
7577|NAD83(2011) / WISCRS Trempealeau (m)|=8113
7578|NAD83(2011) / WISCRS Vernon (m)|=8111
7579|NAD83(2011) / WISCRS Vilas (m)|=8109
7580|NAD83(2011) / WISCRS Walworth (m)|=8107
7581|NAD83(2011) / WISCRS Washburn (m)|=8105
7582|NAD83(2011) / WISCRS Washington (m)|=8103
7583|NAD83(2011) / WISCRS Waukesha (m)|=8101
7584|NAD83(2011) / WISCRS Waupaca (m)|=8099
7585|NAD83(2011) / WISCRS Waushara (m)|=8097
7586|NAD83(2011) / WISCRS Wood (m)|=8095
7587|NAD83(2011) / WISCRS Adams and Juneau (ftUS)|=8226
7588|NAD83(2011) / WISCRS Ashland (ftUS)|=8224
7589|NAD83(2011) / WISCRS Barron (ftUS)|=8220
7590|NAD83(2011) / WISCRS Bayfield (ftUS)|=8216
7591|NAD83(2011) / WISCRS Brown (ftUS)|=8213
7592|NAD83(2011) / WISCRS Buffalo (ftUS)|=8210
7593|NAD83(2011) / WISCRS Burnett (ftUS)|=8208
7594|NAD83(2011) / WISCRS Calumet, Fond du Lac, Outagamie and Winnebago (ftUS)|=8206
7595|NAD83(2011) / WISCRS Chippewa (ftUS)|=8204
7596|NAD83(2011) / WISCRS Clark (ftUS)|=8202
7597|NAD83(2011) / WISCRS Columbia (ftUS)|=8200
7598|NAD83(2011) / WISCRS Crawford (ftUS)|=8197
7599|NAD83(2011) / WISCRS Dane (ftUS)|=8193
7600|NAD83(2011) / WISCRS Dodge and Jefferson (ftUS)|=8189
7601|NAD83(2011) / WISCRS Door (ftUS)|=8185
7602|NAD83(2011) / WISCRS Douglas (ftUS)|=8182
7603|NAD83(2011) / WISCRS Dunn (ftUS)|=8180
7604|NAD83(2011) / WISCRS Eau Claire (ftUS)|=8093
7605|NAD83(2011) / WISCRS Florence (ftUS)|=8091
7606|NAD83(2011) / WISCRS Forest (ftUS)|=8177
7607|NAD83(2011) / WISCRS Grant (ftUS)|=8172
7608|NAD83(2011) / WISCRS Green and Lafayette (ftUS)|=8170
7609|NAD83(2011) / WISCRS Green Lake and Marquette (ftUS)|=8168
7610|NAD83(2011) / WISCRS Iowa (ftUS)|=8166
7611|NAD83(2011) / WISCRS Iron (ftUS)|=8164
7612|NAD83(2011) / WISCRS Jackson (ftUS)|=8162
7613|NAD83(2011) / WISCRS Kenosha, Milwaukee, Ozaukee and Racine (ftUS)|=8160
7614|NAD83(2011) / WISCRS Kewaunee, Manitowoc and Sheboygan (ftUS)|=8158
7615|NAD83(2011) / WISCRS La Crosse (ftUS)|=8156
7616|NAD83(2011) / WISCRS Langlade (ftUS)|=8154
7617|NAD83(2011) / WISCRS Lincoln (ftUS)|=8152
7618|NAD83(2011) / WISCRS Marathon (ftUS)|=8150
7619|NAD83(2011) / WISCRS Marinette (ftUS)|=8148
7620|NAD83(2011) / WISCRS Menominee (ftUS)|=8146
7621|NAD83(2011) / WISCRS Monroe (ftUS)|=8144
7622|NAD83(2011) / WISCRS Oconto (ftUS)|=8142
7623|NAD83(2011) / WISCRS Oneida (ftUS)|=8140
7624|NAD83(2011) / WISCRS Pepin and Pierce (ftUS)|=8138
7625|NAD83(2011) / WISCRS Polk (ftUS)|=8136
7626|NAD83(2011) / WISCRS Portage (ftUS)|=8134
7627|NAD83(2011) / WISCRS Price (ftUS)|=8132
7628|NAD83(2011) / WISCRS Richland (ftUS)|=8130
7629|NAD83(2011) / WISCRS Rock (ftUS)|=8128
7630|NAD83(2011) / WISCRS Rusk (ftUS)|=8126
7631|NAD83(2011) / WISCRS Sauk (ftUS)|=8124
7632|NAD83(2011) / WISCRS Sawyer (ftUS)|=8122
7633|NAD83(2011) / WISCRS Shawano (ftUS)|=8120
7634|NAD83(2011) / WISCRS St. Croix (ftUS)|=8118
7635|NAD83(2011) / WISCRS Taylor (ftUS)|=8116
7636|NAD83(2011) / WISCRS Trempealeau (ftUS)|=8114
7637|NAD83(2011) / WISCRS Vernon (ftUS)|=8112
7638|NAD83(2011) / WISCRS Vilas (ftUS)|=8110
7639|NAD83(2011) / WISCRS Walworth (ftUS)|=8108
7640|NAD83(2011) / WISCRS Washburn (ftUS)|=8106
7641|NAD83(2011) / WISCRS Washington (ftUS)|=8104
7642|NAD83(2011) / WISCRS Waukesha (ftUS)|=8102
7643|NAD83(2011) / WISCRS Waupaca (ftUS)|=8100
7644|NAD83(2011) / WISCRS Waushara (ftUS)|=8098
7645|NAD83(2011) / WISCRS Wood (ftUS)|=8096
8065|NAD83(2011) / PCCS zone 1 (ft)|proj=omerc lat_0=32.25 lonc=-111.4 alpha=45 gamma=45 k=1.00011 x_0=48768 y_0=243840 units=ft
8066|NAD83(2011) / PCCS zone 2 (ft)|proj=tmerc lat_0=31.25 lon_0=-112.166666666667 k=1.00009 x_0=548640 y_0=304800 units=ft
8067|NAD83(2011) / PCCS zone 3 (ft)|proj=tmerc lat_0=31.5 lon_0=-113.166666666667 k=1.000055 x_0=182880 y_0=0 units=ft
8068|NAD83(2011) / PCCS zone 4 (ft)|proj=lcc lat_1=30.5 lat_0=30.5 lon_0=-110.75 k_0=0.9998 x_0=9144 y_0=-188976 units=ft
8311|NAD83(2011) / Oregon Burns-Harper zone (m)|proj=tmerc lat_0=43.5 lon_0=-117.666666666667 k=1.00014 x_0=90000 y_0=0
8312|NAD83(2011) / Oregon Burns-Harper zone (ft)|proj=tmerc lat_0=43.5 lon_0=-117.666666666667 k=1.00014 x_0=90000.00001488 y_0=0 units=ft
8313|NAD83(2011) / Oregon Canyon City-Burns zone (m)|proj=tmerc lat_0=43.5 lon_0=-119 k=1.00022 x_0=20000 y_0=0
8314|NAD83(2011) / Oregon Canyon City-Burns zone (ft)|proj=tmerc lat_0=43.5 lon_0=-119 k=1.00022 x_0=19999.99999992 y_0=0 units=ft
8315|NAD83(2011) / Oregon Coast Range North zone (m)|proj=lcc lat_1=45.5833333333333 lat_0=45.5833333333333 lon_0=-123.416666666667 k_0=1.000045 x_0=30000 y_0=20000
8316|NAD83(2011) / Oregon Coast Range North zone (ft)|proj=lcc lat_1=45.5833333333333 lat_0=45.5833333333333 lon_0=-123.416666666667 k_0=1.000045 x_0=30000.00001512 y_0=19999.99999992 units=ft
8317|NAD83(2011) / Oregon Dayville-Prairie City zone (m)|proj=tmerc lat_0=44.25 lon_0=-119.633333333333 k=1.00012 x_0=20000 y_0=0
8318|NAD83(2011) / Oregon Dayville-Prairie City zone (ft)|proj=tmerc lat_0=44.25 lon_0=-119.633333333333 k=1.00012 x_0=19999.99999992 y_0=0 units=ft
8319|NAD83(2011) / Oregon Denio-Burns zone (m)|proj=tmerc lat_0=41.75 lon_0=-118.416666666667 k=1.00019 x_0=80000 y_0=0
8320|NAD83(2011) / Oregon Denio-Burns zone (ft)|proj=tmerc lat_0=41.75 lon_0=-118.416666666667 k=1.00019 x_0=79999.99999968 y_0=0 units=ft
8321|NAD83(2011) / Oregon Halfway zone (m)|proj=lcc lat_1=45.25 lat_0=45.25 lon_0=-117.25 k_0=1.000085 x_0=40000 y_0=70000
8322|NAD83(2011) / Oregon Halfway zone (ft)|proj=lcc lat_1=45.25 lat_0=45.25 lon_0=-117.25 k_0=1.000085 x_0=39999.99999984 y_0=70000.00001496 units=ft
8323|NAD83(2011) / Oregon Medford-Diamond Lake zone (m)|proj=lcc lat_1=42 lat_0=42 lon_0=-122.25 k_0=1.00004 x_0=60000 y_0=-60000
8324|NAD83(2011) / Oregon Medford-Diamond Lake zone (ft)|proj=lcc lat_1=42 lat_0=42 lon_0=-122.25 k_0=1.00004 x_0=59999.99999976 y_0=-59999.99999976 units=ft
8325|NAD83(2011) / Oregon Mitchell zone (m)|proj=lcc lat_1=47 lat_0=47 lon_0=-120.25 k_0=0.99927 x_0=30000 y_0=290000
8326|NAD83(2011) / Oregon Mitchell zone (ft)|proj=lcc lat_1=47 lat_0=47 lon_0=-120.25 k_0=0.99927 x_0=30000.00001512 y_0=290000.00001408 units=ft
8327|NAD83(2011) / Oregon North Central zone (m)|proj=lcc lat_1=46.1666666666667 lat_0=46.1666666666667 lon_0=-120.5 k_0=1 x_0=100000 y_0=140000
8328|NAD83(2011) / Oregon North Central zone (ft)|proj=lcc lat_1=46.1666666666667 lat_0=46.1666666666667 lon_0=-120.5 k_0=1 x_0=99999.9999996 y_0=139999.99999944 units=ft
8329|NAD83(2011) / Oregon Ochoco Summit zone (m)|proj=lcc lat_1=43.5 lat_0=43.5 lon_0=-120.5 k_0=1.00006 x_0=40000 y_0=-80000
8330|NAD83(2011) / Oregon Ochoco Summit zone (ft)|proj=lcc lat_1=43.5 lat_0=43.5 lon_0=-120.5 k_0=1.00006 x_0=39999.99999984 y_0=-79999.99999968 units=ft
8331|NAD83(2011) / Oregon Owyhee zone (m)|proj=tmerc lat_0=41.75 lon_0=-117.583333333333 k=1.00018 x_0=70000 y_0=0
8332|NAD83(2011) / Oregon Owyhee zone (ft)|proj=tmerc lat_0=41.75 lon_0=-117.583333333333 k=1.00018 x_0=70000.00001496 y_0=0 units=ft
8333|NAD83(2011) / Oregon Pilot Rock-Ukiah zone (m)|proj=lcc lat_1=46.1666666666667 lat_0=46.1666666666667 lon_0=-119 k_0=1.000025 x_0=50000 y_0=130000
8334|NAD83(2011) / Oregon Pilot Rock-Ukiah zone (ft)|proj=lcc lat_1=46.1666666666667 lat_0=46.1666666666667 lon_0=-119 k_0=1.000025 x_0=50000.00001504 y_0=130000.00001472 units=ft
8335|NAD83(2011) / Oregon Prairie City-Brogan zone (m)|proj=lcc lat_1=44 lat_0=44 lon_0=-118 k_0=1.00017 x_0=60000 y_0=0
8336|NAD83(2011) / Oregon Prairie City-Brogan zone (ft)|proj=lcc lat_1=44 lat_0=44 lon_0=-118 k_0=1.00017 x_0=59999.99999976 y_0=0 units=ft
8337|NAD83(2011) / Oregon Riley-Lakeview zone (m)|proj=tmerc lat_0=41.75 lon_0=-120.333333333333 k=1.000215 x_0=70000 y_0=0
8338|NAD83(2011) / Oregon Riley-Lakeview zone (ft)|proj=tmerc lat_0=41.75 lon_0=-120.333333333333 k=1.000215 x_0=70000.00001496 y_0=0 units=ft
8339|NAD83(2011) / Oregon Siskiyou Pass zone (m)|proj=lcc lat_1=42.5 lat_0=42.5 lon_0=-122.583333333333 k_0=1.00015 x_0=10000 y_0=60000
8340|NAD83(2011) / Oregon Siskiyou Pass zone (ft)|proj=lcc lat_1=42.5 lat_0=42.5 lon_0=-122.583333333333 k_0=1.00015 x_0=10000.0000152 y_0=59999.99999976 units=ft
8341|NAD83(2011) / Oregon Ukiah-Fox zone (m)|proj=lcc lat_1=45.25 lat_0=45.25 lon_0=-119 k_0=1.00014 x_0=30000 y_0=90000
8342|NAD83(2011) / Oregon Ukiah-Fox zone (ft)|proj=lcc lat_1=45.25 lat_0=45.25 lon_0=-119 k_0=1.00014 x_0=30000.00001512 y_0=90000.00001488 units=ft
8343|NAD83(2011) / Oregon Wallowa zone (m)|proj=tmerc lat_0=45.25 lon_0=-117.5 k=1.000195 x_0=60000 y_0=0
8344|NAD83(2011) / Oregon Wallowa zone (ft)|proj=tmerc lat_0=45.25 lon_0=-117.5 k=1.000195 x_0=59999.99999976 y_0=0 units=ft
8345|NAD83(2011) / Oregon Warner Highway zone (m)|proj=lcc lat_1=42.5 lat_0=42.5 lon_0=-120 k_0=1.000245 x_0=40000 y_0=60000
8346|NAD83(2011) / Oregon Warner Highway zone (ft)|proj=lcc lat_1=42.5 lat_0=42.5 lon_0=-120 k_0=1.000245 x_0=39999.99999984 y_0=59999.99999976 units=ft
8347|NAD83(2011) / Oregon Willamette Pass zone (m)|proj=tmerc lat_0=43 lon_0=-122 k=1.000223 x_0=20000 y_0=0
8348|NAD83(2011) / Oregon Willamette Pass zone (ft)|proj=tmerc lat_0=43 lon_0=-122 k=1.000223 x_0=19999.99999992 y_0=0 units=ft
8383|NAD83(2011) / NCRS Las Vegas (m)|=8379
8384|NAD83(2011) / NCRS Las Vegas (ftUS)|=8380
8385|NAD83(2011) / NCRS Las Vegas high (m)|=8381
8387|NAD83(2011) / NCRS Las Vegas high (ftUS)|=8382
8518|NAD83(2011) / KS RCS zone 1|proj=tmerc lat_0=37.5 lon_0=-101.6 k=1.000156 x_0=457200.914401829 y_0=0 units=us-ft
8519|NAD83(2011) / KS RCS zone 2|proj=tmerc lat_0=37.5 lon_0=-100.95 k=1.000134 x_0=762001.524003048 y_0=0 units=us-ft
8520|NAD83(2011) / KS RCS zone 3|proj=tmerc lat_0=37.5 lon_0=-100.35 k=1.000116 x_0=1066802.13360427 y_0=0 units=us-ft
8521|NAD83(2011) / KS RCS zone 4|proj=tmerc lat_0=37.5 lon_0=-99.45 k=1.000082 x_0=1371602.74320549 y_0=0 units=us-ft
8522|NAD83(2011) / KS RCS zone 5|proj=tmerc lat_0=37.5 lon_0=-98.6666666666667 k=1.000078 x_0=1676403.35280671 y_0=0 units=us-ft
8523|NAD83(2011) / KS RCS zone 6|proj=tmerc lat_0=37.5 lon_0=-98.15 k=1.000068 x_0=1981203.96240793 y_0=0 units=us-ft
8524|NAD83(2011) / KS RCS zone 7|proj=tmerc lat_0=37.5 lon_0=-97.3333333333333 k=1.000049 x_0=2286004.57200914 y_0=0 units=us-ft
8525|NAD83(2011) / KS RCS zone 8|proj=lcc lat_1=39.1666666666667 lat_0=39.1666666666667 lon_0=-96.5 k_0=1.000044 x_0=2590805.18161036 y_0=182880.365760732 units=us-ft
8526|NAD83(2011) / KS RCS zone 9|proj=lcc lat_1=38.5 lat_0=38.5 lon_0=-96.5 k_0=1.00005 x_0=2895605.79121158 y_0=91440.1828803658 units=us-ft
8527|NAD83(2011) / KS RCS zone 10|proj=lcc lat_1=39.6333333333333 lat_0=39.6333333333333 lon_0=-95.75 k_0=1.00004 x_0=3200406.4008128 y_0=213360.426720853 units=us-ft
8528|NAD83(2011) / KS RCS zone 11|proj=lcc lat_1=39.1 lat_0=39.1 lon_0=-95.25 k_0=1.000033 x_0=3505207.01041402 y_0=182880.365760732 units=us-ft
8529|NAD83(2011) / KS RCS zone 12|proj=tmerc lat_0=36.75 lon_0=-101.416666666667 k=1.00014 x_0=3810007.62001524 y_0=0 units=us-ft
8531|NAD83(2011) / KS RCS zone 13|proj=tmerc lat_0=36.75 lon_0=-100.4 k=1.000109 x_0=4114808.22961646 y_0=0 units=us-ft
8533|NAD83(2011) / KS RCS zone 14|proj=tmerc lat_0=36.75 lon_0=-99.6666666666667 k=1.000097 x_0=4419608.83921768 y_0=0 units=us-ft
8534|NAD83(2011) / KS RCS zone 15|proj=tmerc lat_0=36.75 lon_0=-99.2 k=1.000087 x_0=4724409.4488189 y_0=0 units=us-ft
8535|NAD83(2011) / KS RCS zone 16|proj=tmerc lat_0=36.75 lon_0=-98.55 k=1.000069 x_0=5029210.05842012 y_0=0 units=us-ft
8536|NAD83(2011) / KS RCS zone 17|proj=lcc lat_1=37.7666666666667 lat_0=37.7666666666667 lon_0=-97.5 k_0=1.000059 x_0=5334010.66802134 y_0=121920.243840488 units=us-ft
8538|NAD83(2011) / KS RCS zone 18|proj=lcc lat_1=37.1833333333333 lat_0=37.1833333333333 lon_0=-97.5 k_0=1.000055 x_0=5638811.27762256 y_0=60960.1219202439 units=us-ft
8539|NAD83(2011) / KS RCS zone 19|proj=tmerc lat_0=36.75 lon_0=-95.9666666666667 k=1.000034 x_0=5943611.88722378 y_0=0 units=us-ft
8540|NAD83(2011) / KS RCS zone 20|proj=tmerc lat_0=36.75 lon_0=-95.0833333333333 k=1.000031 x_0=6248412.49682499 y_0=0 units=us-ft
9748|NAD83(2011) / Alabama East (ftUS)|proj=tmerc lat_0=30.5 lon_0=-85.8333333333333 k=0.99996 x_0=200000.0001016 y_0=0 units=us-ft
9749|NAD83(2011) / Alabama West (ftUS)|proj=tmerc lat_0=30 lon_0=-87.5 k=0.999933333 x_0=600000 y_0=0 units=us-ft
20050|NAD83(2011) / Amtrak NECCS21 (ft)|proj=omerc lat_0=40.8333333333333 lonc=-74 alpha=58 gamma=58 k=0.99999 x_0=457200 y_0=457200 units=ft
@NAD83 (National Spatial Reference System PA11)
6322|NAD83(PA11)|=4269
6628|NAD83(PA11) / Hawaii zone 1|=26961
6629|NAD83(PA11) / Hawaii zone 2|=26962
6630|NAD83(PA11) / Hawaii zone 3|=26963
6631|NAD83(PA11) / Hawaii zone 4|=26964
6632|NAD83(PA11) / Hawaii zone 5|=26965
6633|NAD83(PA11) / Hawaii zone 3 (ftUS)|=3759
6634|NAD83(PA11) / UTM zone 4N|=3750
6635|NAD83(PA11) / UTM zone 5N|=3751
6636|NAD83(PA11) / UTM zone 2S|=2195
@NAD83 (National Spatial Reference System MA11)
6325|NAD83(MA11)|=4269
6637|NAD83(MA11) / Guam Map Grid|=4414
8692|NAD83(MA11) / UTM zone 54N|proj=utm zone=54
8693|NAD83(MA11) / UTM zone 55N|proj=utm zone=55
@NAD83 (Federal Base Network)
8860|NAD83(FBN)|=4269
@NAD83 (High Accuracy Reference Network - Corrected)
8545|NAD83(HARN Corrected)|=4269
@NAD83 Canadian Spatial Reference System
2945|NAD83(CSRS) / MTM zone 3|=32183
2946|NAD83(CSRS) / MTM zone 4|=32184
2947|NAD83(CSRS) / MTM zone 5|=32185
2948|NAD83(CSRS) / MTM zone 6|=32186
2949|NAD83(CSRS) / MTM zone 7|=32187
2950|NAD83(CSRS) / MTM zone 8|=32188
2951|NAD83(CSRS) / MTM zone 9|=32189
2952|NAD83(CSRS) / MTM zone 10|=32190
2953|NAD83(CSRS) / New Brunswick Stereographic|proj=sterea lat_0=46.5 lon_0=-66.5 k=0.999912 x_0=2500000 y_0=7500000
2954|NAD83(CSRS) / Prince Edward Isl. Stereographic (NAD83)|proj=sterea lat_0=47.25 lon_0=-63 k=0.999912 x_0=400000 y_0=800000
2955|NAD83(CSRS) / UTM zone 11N|=3741
2956|NAD83(CSRS) / UTM zone 12N|=3742
2957|NAD83(CSRS) / UTM zone 13N|=3743
2958|NAD83(CSRS) / UTM zone 17N|=3747
2959|NAD83(CSRS) / UTM zone 18N|=3748
2960|NAD83(CSRS) / UTM zone 19N|=3749
2961|NAD83(CSRS) / UTM zone 20N|proj=utm zone=20
2962|NAD83(CSRS) / UTM zone 21N|proj=utm zone=21
3153|NAD83(CSRS) / BC Albers|=3005
3154|NAD83(CSRS) / UTM zone 7N|=3714
3155|NAD83(CSRS) / UTM zone 8N|=3715
3156|NAD83(CSRS) / UTM zone 9N|=3716
3157|NAD83(CSRS) / UTM zone 10N|=3740
3158|NAD83(CSRS) / UTM zone 14N|=3744
3159|NAD83(CSRS) / UTM zone 15N|=3745
3160|NAD83(CSRS) / UTM zone 16N|=3746
3162|NAD83(CSRS) / Ontario MNR Lambert|=3161
3348|NAD83(CSRS) / Statistics Canada Lambert|=3347
3402|NAD83(CSRS) / Alberta 10-TM (Forest)|=3400
3403|NAD83(CSRS) / Alberta 10-TM (Resource)|=3401
3579|NAD83(CSRS) / Yukon Albers|=3578
3581|NAD83(CSRS) / NWT Lambert|=3580
3761|NAD83(CSRS) / UTM zone 22N|proj=utm zone=22
3779|NAD83(CSRS) / Alberta 3TM ref merid 111 W|=3775
3780|NAD83(CSRS) / Alberta 3TM ref merid 114 W|=3776
3781|NAD83(CSRS) / Alberta 3TM ref merid 117 W|=3777
3799|NAD83(CSRS) / MTQ Lambert|=3798
3802|NAD83(CSRS) / Alberta 3TM ref merid 120 W|=3801
3979|NAD83(CSRS) / Canada Atlas Lambert|=3978
4617|NAD83(CSRS)|=4269
5321|NAD83(CSRS) / Teranet Ontario Lambert|=5320
6098|NAD83(CSRS) / EPSG Arctic zone 1-23|proj=lcc lat_0=85.4371183333333 lon_0=-90 lat_1=87 lat_2=83.6666666666667 x_0=23500000 y_0=1500000
6099|NAD83(CSRS) / EPSG Arctic zone 2-14|proj=lcc lat_0=82.0584248888889 lon_0=-115 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=14500000 y_0=2500000
6100|NAD83(CSRS) / EPSG Arctic zone 2-16|proj=lcc lat_0=82.0584248888889 lon_0=-75 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=16500000 y_0=2500000
6101|NAD83(CSRS) / EPSG Arctic zone 3-25|proj=lcc lat_0=78.7073375277778 lon_0=-129 lat_1=80.3333333333333 lat_2=77 x_0=25500000 y_0=3500000
6102|NAD83(CSRS) / EPSG Arctic zone 3-27|proj=lcc lat_0=78.7073375277778 lon_0=-99 lat_1=80.3333333333333 lat_2=77 x_0=27500000 y_0=3500000
6103|NAD83(CSRS) / EPSG Arctic zone 3-29|proj=lcc lat_0=78.7073375277778 lon_0=-69 lat_1=80.3333333333333 lat_2=77 x_0=29500000 y_0=3500000
6104|NAD83(CSRS) / EPSG Arctic zone 4-14|proj=lcc lat_0=75.3644033055556 lon_0=-129 lat_1=77 lat_2=73.6666666666667 x_0=14500000 y_0=4500000
6105|NAD83(CSRS) / EPSG Arctic zone 4-16|proj=lcc lat_0=75.3644033055556 lon_0=-104 lat_1=77 lat_2=73.6666666666667 x_0=16500000 y_0=4500000
6106|NAD83(CSRS) / EPSG Arctic zone 4-18|proj=lcc lat_0=75.3644033055556 lon_0=-79 lat_1=77 lat_2=73.6666666666667 x_0=18500000 y_0=4500000
6107|NAD83(CSRS) / EPSG Arctic zone 5-33|proj=lcc lat_0=72.0250091944445 lon_0=-131 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=33500000 y_0=5500000
6108|NAD83(CSRS) / EPSG Arctic zone 5-35|proj=lcc lat_0=72.0250091944445 lon_0=-111 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=35500000 y_0=5500000
6109|NAD83(CSRS) / EPSG Arctic zone 5-37|proj=lcc lat_0=72.0250091944445 lon_0=-91 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=37500000 y_0=5500000
6110|NAD83(CSRS) / EPSG Arctic zone 5-39|proj=lcc lat_0=72.0250091944445 lon_0=-71 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=39500000 y_0=5500000
6111|NAD83(CSRS) / EPSG Arctic zone 6-18|proj=lcc lat_0=68.6874755555556 lon_0=-132 lat_1=70.3333333333333 lat_2=67 x_0=18500000 y_0=6500000
6112|NAD83(CSRS) / EPSG Arctic zone 6-20|proj=lcc lat_0=68.6874755555556 lon_0=-113 lat_1=70.3333333333333 lat_2=67 x_0=20500000 y_0=6500000
6113|NAD83(CSRS) / EPSG Arctic zone 6-22|proj=lcc lat_0=68.6874755555556 lon_0=-94 lat_1=70.3333333333333 lat_2=67 x_0=22500000 y_0=6500000
6114|NAD83(CSRS) / EPSG Arctic zone 6-24|proj=lcc lat_0=68.6874755555556 lon_0=-75 lat_1=70.3333333333333 lat_2=67 x_0=24500000 y_0=6500000
6622|NAD83(CSRS) / Quebec Lambert|=32198
6624|NAD83(CSRS) / Quebec Albers|=6623
9709|NAD83(CSRS) / UTM zone 23N|proj=utm zone=23
9713|NAD83(CSRS) / UTM zone 24N|=9712
26891|NAD83(CSRS) / MTM zone 11|=32191
26892|NAD83(CSRS) / MTM zone 12|=32192
26893|NAD83(CSRS) / MTM zone 13|=32193
26894|NAD83(CSRS) / MTM zone 14|=32194
26895|NAD83(CSRS) / MTM zone 15|=32195
26896|NAD83(CSRS) / MTM zone 16|=32196
26897|NAD83(CSRS) / MTM zone 17|=32197
26898|NAD83(CSRS) / MTM zone 1|=32181
26899|NAD83(CSRS) / MTM zone 2|=32182
@North American Datum of 1983 (CSRS) version 2
8237|NAD83(CSRS)v2|=4269
22207|NAD83(CSRS)v2 / UTM zone 7N|=3714
22208|NAD83(CSRS)v2 / UTM zone 8N|=3715
22209|NAD83(CSRS)v2 / UTM zone 9N|=3716
22210|NAD83(CSRS)v2 / UTM zone 10N|=3740
22211|NAD83(CSRS)v2 / UTM zone 11N|=3741
22212|NAD83(CSRS)v2 / UTM zone 12N|=3742
22213|NAD83(CSRS)v2 / UTM zone 13N|=3743
22214|NAD83(CSRS)v2 / UTM zone 14N|=3744
22215|NAD83(CSRS)v2 / UTM zone 15N|=3745
22216|NAD83(CSRS)v2 / UTM zone 16N|=3746
22217|NAD83(CSRS)v2 / UTM zone 17N|=3747
22218|NAD83(CSRS)v2 / UTM zone 18N|=3748
22219|NAD83(CSRS)v2 / UTM zone 19N|=3749
22220|NAD83(CSRS)v2 / UTM zone 20N|=2961
22221|NAD83(CSRS)v2 / UTM zone 21N|=2962
22222|NAD83(CSRS)v2 / UTM zone 22N|=3761
22239|NAD83(CSRS)v2 / PEI Stereographic|=2954
22240|NAD83(CSRS)v2 / NB Stereographic|=2953
22243|NAD83(CSRS)v2 / SCoPQ zone 3|=32183
22244|NAD83(CSRS)v2 / SCoPQ zone 4|=32184
22245|NAD83(CSRS)v2 / SCoPQ zone 5|=32185
22246|NAD83(CSRS)v2 / SCoPQ zone 6|=32186
22247|NAD83(CSRS)v2 / SCoPQ zone 7|=32187
22248|NAD83(CSRS)v2 / SCoPQ zone 8|=32188
22249|NAD83(CSRS)v2 / SCoPQ zone 9|=32189
22250|NAD83(CSRS)v2 / SCoPQ zone 10|=32190
22262|NAD83(CSRS)v2 / Alberta 3TM ref merid 111 W|=3775
22263|NAD83(CSRS)v2 / Alberta 3TM ref merid 114 W|=3776
22264|NAD83(CSRS)v2 / Alberta 3TM ref merid 117 W|=3777
22265|NAD83(CSRS)v2 / Alberta 3TM ref merid 120 W|=3801
@North American Datum of 1983 (CSRS) version 3
8240|NAD83(CSRS)v3|=4269
22307|NAD83(CSRS)v3 / UTM zone 7N|=3714
22308|NAD83(CSRS)v3 / UTM zone 8N|=3715
22309|NAD83(CSRS)v3 / UTM zone 9N|=3716
22310|NAD83(CSRS)v3 / UTM zone 10N|=3740
22311|NAD83(CSRS)v3 / UTM zone 11N|=3741
22312|NAD83(CSRS)v3 / UTM zone 12N|=3742
22313|NAD83(CSRS)v3 / UTM zone 13N|=3743
22314|NAD83(CSRS)v3 / UTM zone 14N|=3744
22315|NAD83(CSRS)v3 / UTM zone 15N|=3745
22316|NAD83(CSRS)v3 / UTM zone 16N|=3746
22317|NAD83(CSRS)v3 / UTM zone 17N|=3747
22318|NAD83(CSRS)v3 / UTM zone 18N|=3748
22319|NAD83(CSRS)v3 / UTM zone 19N|=3749
22320|NAD83(CSRS)v3 / UTM zone 20N|=2961
22321|NAD83(CSRS)v3 / UTM zone 21N|=2962
22322|NAD83(CSRS)v3 / UTM zone 22N|=3761
22337|NAD83(CSRS)v3 / MTM NS 1997 zone 5|proj=tmerc lat_0=0 lon_0=-64.5 k=0.9999 x_0=15500000 y_0=0
22338|NAD83(CSRS)v3 / MTM NS 1997 zone 4|proj=tmerc lat_0=0 lon_0=-61.5 k=0.9999 x_0=14500000 y_0=0
22348|NAD83(CSRS)v3 / MTM zone 8|=32188
22349|NAD83(CSRS)v3 / MTM zone 9|=32189
22350|NAD83(CSRS)v3 / MTM zone 10|=32190
22351|NAD83(CSRS)v3 / MTM zone 11|=32191
22352|NAD83(CSRS)v3 / MTM zone 12|=32192
22353|NAD83(CSRS)v3 / MTM zone 13|=32193
22354|NAD83(CSRS)v3 / MTM zone 14|=32194
22355|NAD83(CSRS)v3 / MTM zone 15|=32195
22356|NAD83(CSRS)v3 / MTM zone 16|=32196
22357|NAD83(CSRS)v3 / MTM zone 17|=32197
@North American Datum of 1983 (CSRS) version 4
8246|NAD83(CSRS)v4|=4269
22407|NAD83(CSRS)v4 / UTM zone 7N|=3714
22408|NAD83(CSRS)v4 / UTM zone 8N|=3715
22409|NAD83(CSRS)v4 / UTM zone 9N|=3716
22410|NAD83(CSRS)v4 / UTM zone 10N|=3740
22411|NAD83(CSRS)v4 / UTM zone 11N|=3741
22412|NAD83(CSRS)v4 / UTM zone 12N|=3742
22413|NAD83(CSRS)v4 / UTM zone 13N|=3743
22414|NAD83(CSRS)v4 / UTM zone 14N|=3744
22415|NAD83(CSRS)v4 / UTM zone 15N|=3745
22416|NAD83(CSRS)v4 / UTM zone 16N|=3746
22417|NAD83(CSRS)v4 / UTM zone 17N|=3747
22418|NAD83(CSRS)v4 / UTM zone 18N|=3748
22419|NAD83(CSRS)v4 / UTM zone 19N|=3749
22420|NAD83(CSRS)v4 / UTM zone 20N|=2961
22421|NAD83(CSRS)v4 / UTM zone 21N|=2962
22422|NAD83(CSRS)v4 / UTM zone 22N|=3761
22462|NAD83(CSRS)v4 / Alberta 3TM ref merid 111 W|=3775
22463|NAD83(CSRS)v4 / Alberta 3TM ref merid 114 W|=3776
22464|NAD83(CSRS)v4 / Alberta 3TM ref merid 117 W|=3777
22465|NAD83(CSRS)v4 / Alberta 3TM ref merid 120 W|=3801
@North American Datum of 1983 (CSRS) version 5
8249|NAD83(CSRS)v5|=4269
@North American Datum of 1983 (CSRS) version 6
8082|NAD83(CSRS)v6 / MTM NS 2010 zone 4|proj=tmerc lat_0=0 lon_0=-61.5 k=0.9999 x_0=24500000 y_0=0
8083|NAD83(CSRS)v6 / MTM NS 2010 zone 5|proj=tmerc lat_0=0 lon_0=-64.5 k=0.9999 x_0=25500000 y_0=0
8252|NAD83(CSRS)v6|=4269
22607|NAD83(CSRS)v6 / UTM zone 7N|=3714
22608|NAD83(CSRS)v6 / UTM zone 8N|=3715
22609|NAD83(CSRS)v6 / UTM zone 9N|=3716
22610|NAD83(CSRS)v6 / UTM zone 10N|=3740
22611|NAD83(CSRS)v6 / UTM zone 11N|=3741
22612|NAD83(CSRS)v6 / UTM zone 12N|=3742
22613|NAD83(CSRS)v6 / UTM zone 13N|=3743
22614|NAD83(CSRS)v6 / UTM zone 14N|=3744
22615|NAD83(CSRS)v6 / UTM zone 15N|=3745
22616|NAD83(CSRS)v6 / UTM zone 16N|=3746
22617|NAD83(CSRS)v6 / UTM zone 17N|=3747
22618|NAD83(CSRS)v6 / UTM zone 18N|=3748
22619|NAD83(CSRS)v6 / UTM zone 19N|=3749
22620|NAD83(CSRS)v6 / UTM zone 20N|=2961
22621|NAD83(CSRS)v6 / UTM zone 21N|=2962
22622|NAD83(CSRS)v6 / UTM zone 22N|=3761
22639|NAD83(CSRS)v6 / PEI Stereographic|=2954
22641|NAD83(CSRS)v6 / MTM zone 1|=32181
22642|NAD83(CSRS)v6 / MTM zone 2|=32182
22643|NAD83(CSRS)v6 / MTM zone 3|=32183
22644|NAD83(CSRS)v6 / MTM zone 4|=32184
22645|NAD83(CSRS)v6 / MTM zone 5|=32185
22646|NAD83(CSRS)v6 / MTM zone 6|=32186
22648|NAD83(CSRS)v6 / MTM zone 8|=32188
22649|NAD83(CSRS)v6 / MTM zone 9|=32189
22650|NAD83(CSRS)v6 / MTM zone 10|=32190
22651|NAD83(CSRS)v6 / MTM zone 11|=32191
22652|NAD83(CSRS)v6 / MTM zone 12|=32192
22653|NAD83(CSRS)v6 / MTM zone 13|=32193
22654|NAD83(CSRS)v6 / MTM zone 14|=32194
22655|NAD83(CSRS)v6 / MTM zone 15|=32195
22656|NAD83(CSRS)v6 / MTM zone 16|=32196
22657|NAD83(CSRS)v6 / MTM zone 17|=32197
@North American Datum of 1983 (CSRS) version 7
8255|NAD83(CSRS)v7|=4269
22707|NAD83(CSRS)v7 / UTM zone 7N|=3714
22708|NAD83(CSRS)v7 / UTM zone 8N|=3715
22709|NAD83(CSRS)v7 / UTM zone 9N|=3716
22710|NAD83(CSRS)v7 / UTM zone 10N|=3740
22711|NAD83(CSRS)v7 / UTM zone 11N|=3741
22712|NAD83(CSRS)v7 / UTM zone 12N|=3742
22713|NAD83(CSRS)v7 / UTM zone 13N|=3743
22714|NAD83(CSRS)v7 / UTM zone 14N|=3744
22715|NAD83(CSRS)v7 / UTM zone 15N|=3745
22716|NAD83(CSRS)v7 / UTM zone 16N|=3746
22717|NAD83(CSRS)v7 / UTM zone 17N|=3747
22718|NAD83(CSRS)v7 / UTM zone 18N|=3748
22719|NAD83(CSRS)v7 / UTM zone 19N|=3749
22720|NAD83(CSRS)v7 / UTM zone 20N|=2961
22721|NAD83(CSRS)v7 / UTM zone 21N|=2962
22722|NAD83(CSRS)v7 / UTM zone 22N|=3761
22739|NAD83(CSRS)v7 / PEI Stereographic|=2954
22762|NAD83(CSRS)v7 / Alberta 3TM ref merid 111 W|=3775
22763|NAD83(CSRS)v7 / Alberta 3TM ref merid 114 W|=3776
22764|NAD83(CSRS)v7 / Alberta 3TM ref merid 117 W|=3777
22765|NAD83(CSRS)v7 / Alberta 3TM ref merid 120 W|=3801
@Mexico ITRF92
4483|Mexico ITRF92|=4269
4484|Mexico ITRF92 / UTM zone 11N|=3741
4485|Mexico ITRF92 / UTM zone 12N|=3742
4486|Mexico ITRF92 / UTM zone 13N|=3743
4487|Mexico ITRF92 / UTM zone 14N|=3744
4488|Mexico ITRF92 / UTM zone 15N|=3745
4489|Mexico ITRF92 / UTM zone 16N|=3746
6362|Mexico ITRF92 / LCC|proj=lcc lat_0=12 lon_0=-102 lat_1=17.5 lat_2=29.5 x_0=2500000 y_0=0
@Mexico ITRF2008
6365|Mexico ITRF2008|=4269
6366|Mexico ITRF2008 / UTM zone 11N|=3741
6367|Mexico ITRF2008 / UTM zone 12N|=3742
6368|Mexico ITRF2008 / UTM zone 13N|=3743
6369|Mexico ITRF2008 / UTM zone 14N|=3744
6370|Mexico ITRF2008 / UTM zone 15N|=3745
6371|Mexico ITRF2008 / UTM zone 16N|=3746
6372|Mexico ITRF2008 / LCC|=6362
@European Terrestrial Reference System 1989 ensemble
2196|ETRS89 / Kp2000 Jutland|proj=tmerc lat_0=0 lon_0=9.5 k=0.99995 x_0=200000 y_0=0
2197|ETRS89 / Kp2000 Zealand|proj=tmerc lat_0=0 lon_0=12 k=0.99995 x_0=500000 y_0=0
2198|ETRS89 / Kp2000 Bornholm|proj=tmerc lat_0=0 lon_0=15 k=1 x_0=900000 y_0=0
2213|ETRS89 / TM 30 NE|proj=tmerc lat_0=0 lon_0=30 k=0.9996 x_0=500000 y_0=0
3034|ETRS89-extended / LCC Europe|proj=lcc lat_0=52 lon_0=10 lat_1=35 lat_2=65 x_0=4000000 y_0=2800000
3035|ETRS89-extended / LAEA Europe|proj=laea lat_0=52 lon_0=10 x_0=4321000 y_0=3210000
3040|ETRS89 / UTM zone 28N (N-E)|proj=utm zone=28
3041|ETRS89 / UTM zone 29N (N-E)|proj=utm zone=29
3042|ETRS89 / UTM zone 30N (N-E)|proj=utm zone=30
3043|ETRS89 / UTM zone 31N (N-E)|proj=utm zone=31
3044|ETRS89 / UTM zone 32N (N-E)|proj=utm zone=32
3045|ETRS89 / UTM zone 33N (N-E)|proj=utm zone=33
3046|ETRS89 / UTM zone 34N (N-E)|proj=utm zone=34
3047|ETRS89 / UTM zone 35N (N-E)|proj=utm zone=35
3048|ETRS89 / UTM zone 36N (N-E)|proj=utm zone=36
3049|ETRS89 / UTM zone 37N (N-E)|proj=utm zone=37
3067|ETRS89 / TM35FIN(E,N)|=3047
3108|ETRS89 / Guernsey Grid|proj=tmerc lat_0=49.5 lon_0=-2.41666666666667 k=0.999997 x_0=47000 y_0=50000
3109|ETRS89 / Jersey Transverse Mercator|proj=tmerc lat_0=49.225 lon_0=-2.135 k=0.9999999 x_0=40000 y_0=70000
3126|ETRS89 / ETRS-GK19FIN|proj=tmerc lat_0=0 lon_0=19 k=1 x_0=500000 y_0=0
3127|ETRS89 / ETRS-GK20FIN|proj=tmerc lat_0=0 lon_0=20 k=1 x_0=500000 y_0=0
3128|ETRS89 / ETRS-GK21FIN|proj=tmerc lat_0=0 lon_0=21 k=1 x_0=500000 y_0=0
3129|ETRS89 / ETRS-GK22FIN|proj=tmerc lat_0=0 lon_0=22 k=1 x_0=500000 y_0=0
3130|ETRS89 / ETRS-GK23FIN|proj=tmerc lat_0=0 lon_0=23 k=1 x_0=500000 y_0=0
3131|ETRS89 / ETRS-GK24FIN|proj=tmerc lat_0=0 lon_0=24 k=1 x_0=500000 y_0=0
3132|ETRS89 / ETRS-GK25FIN|proj=tmerc lat_0=0 lon_0=25 k=1 x_0=500000 y_0=0
3133|ETRS89 / ETRS-GK26FIN|proj=tmerc lat_0=0 lon_0=26 k=1 x_0=500000 y_0=0
3134|ETRS89 / ETRS-GK27FIN|proj=tmerc lat_0=0 lon_0=27 k=1 x_0=500000 y_0=0
3135|ETRS89 / ETRS-GK28FIN|proj=tmerc lat_0=0 lon_0=28 k=1 x_0=500000 y_0=0
3136|ETRS89 / ETRS-GK29FIN|proj=tmerc lat_0=0 lon_0=29 k=1 x_0=500000 y_0=0
3137|ETRS89 / ETRS-GK30FIN|proj=tmerc lat_0=0 lon_0=30 k=1 x_0=500000 y_0=0
3138|ETRS89 / ETRS-GK31FIN|proj=tmerc lat_0=0 lon_0=31 k=1 x_0=500000 y_0=0
3416|ETRS89 / Austria Lambert|proj=lcc lat_0=47.5 lon_0=13.3333333333333 lat_1=49 lat_2=46 x_0=400000 y_0=400000
3447|ETRS89 / Belgian Lambert 2005|proj=lcc lat_0=50.797815 lon_0=4.35921583333333 lat_1=49.8333333333333 lat_2=51.1666666666667 x_0=150328 y_0=166262
3763|ETRS89 / Portugal TM06|proj=tmerc lat_0=39.6682583333333 lon_0=-8.13310833333333 k=1 x_0=0 y_0=0
3812|ETRS89 / Belgian Lambert 2008|proj=lcc lat_0=50.797815 lon_0=4.35921583333333 lat_1=49.8333333333333 lat_2=51.1666666666667 x_0=649328 y_0=665262
3873|ETRS89 / GK19FIN|proj=tmerc lat_0=0 lon_0=19 k=1 x_0=19500000 y_0=0
3874|ETRS89 / GK20FIN|proj=tmerc lat_0=0 lon_0=20 k=1 x_0=20500000 y_0=0
3875|ETRS89 / GK21FIN|proj=tmerc lat_0=0 lon_0=21 k=1 x_0=21500000 y_0=0
3876|ETRS89 / GK22FIN|proj=tmerc lat_0=0 lon_0=22 k=1 x_0=22500000 y_0=0
3877|ETRS89 / GK23FIN|proj=tmerc lat_0=0 lon_0=23 k=1 x_0=23500000 y_0=0
3878|ETRS89 / GK24FIN|proj=tmerc lat_0=0 lon_0=24 k=1 x_0=24500000 y_0=0
3879|ETRS89 / GK25FIN|proj=tmerc lat_0=0 lon_0=25 k=1 x_0=25500000 y_0=0
3880|ETRS89 / GK26FIN|proj=tmerc lat_0=0 lon_0=26 k=1 x_0=26500000 y_0=0
3881|ETRS89 / GK27FIN|proj=tmerc lat_0=0 lon_0=27 k=1 x_0=27500000 y_0=0
3882|ETRS89 / GK28FIN|proj=tmerc lat_0=0 lon_0=28 k=1 x_0=28500000 y_0=0
3883|ETRS89 / GK29FIN|proj=tmerc lat_0=0 lon_0=29 k=1 x_0=29500000 y_0=0
3884|ETRS89 / GK30FIN|proj=tmerc lat_0=0 lon_0=30 k=1 x_0=30500000 y_0=0
3885|ETRS89 / GK31FIN|proj=tmerc lat_0=0 lon_0=31 k=1 x_0=31500000 y_0=0
4093|ETRS89 / DKTM1|proj=tmerc lat_0=0 lon_0=9 k=0.99998 x_0=200000 y_0=-5000000
4094|ETRS89 / DKTM2|proj=tmerc lat_0=0 lon_0=10 k=0.99998 x_0=400000 y_0=-5000000
4095|ETRS89 / DKTM3|proj=tmerc lat_0=0 lon_0=11.75 k=0.99998 x_0=600000 y_0=-5000000
4096|ETRS89 / DKTM4|proj=tmerc lat_0=0 lon_0=15 k=1 x_0=800000 y_0=-5000000
4258|ETRS89|=4269
4647|ETRS89 / UTM zone 32N (zE-N)|proj=tmerc lat_0=0 lon_0=9 k=0.9996 x_0=32500000 y_0=0
4839|ETRS89 / LCC Germany (N-E)|proj=lcc lat_0=51 lon_0=10.5 lat_1=48.6666666666667 lat_2=53.6666666666667 x_0=0 y_0=0
5048|ETRS89 / TM35FIN(N,E)|=3047
5105|ETRS89 / NTM zone 5|proj=tmerc lat_0=58 lon_0=5.5 k=1 x_0=100000 y_0=1000000
5106|ETRS89 / NTM zone 6|proj=tmerc lat_0=58 lon_0=6.5 k=1 x_0=100000 y_0=1000000
5107|ETRS89 / NTM zone 7|proj=tmerc lat_0=58 lon_0=7.5 k=1 x_0=100000 y_0=1000000
5108|ETRS89 / NTM zone 8|proj=tmerc lat_0=58 lon_0=8.5 k=1 x_0=100000 y_0=1000000
5109|ETRS89 / NTM zone 9|proj=tmerc lat_0=58 lon_0=9.5 k=1 x_0=100000 y_0=1000000
5110|ETRS89 / NTM zone 10|proj=tmerc lat_0=58 lon_0=10.5 k=1 x_0=100000 y_0=1000000
5111|ETRS89 / NTM zone 11|proj=tmerc lat_0=58 lon_0=11.5 k=1 x_0=100000 y_0=1000000
5112|ETRS89 / NTM zone 12|proj=tmerc lat_0=58 lon_0=12.5 k=1 x_0=100000 y_0=1000000
5113|ETRS89 / NTM zone 13|proj=tmerc lat_0=58 lon_0=13.5 k=1 x_0=100000 y_0=1000000
5114|ETRS89 / NTM zone 14|proj=tmerc lat_0=58 lon_0=14.5 k=1 x_0=100000 y_0=1000000
5115|ETRS89 / NTM zone 15|proj=tmerc lat_0=58 lon_0=15.5 k=1 x_0=100000 y_0=1000000
5116|ETRS89 / NTM zone 16|proj=tmerc lat_0=58 lon_0=16.5 k=1 x_0=100000 y_0=1000000
5117|ETRS89 / NTM zone 17|proj=tmerc lat_0=58 lon_0=17.5 k=1 x_0=100000 y_0=1000000
5118|ETRS89 / NTM zone 18|proj=tmerc lat_0=58 lon_0=18.5 k=1 x_0=100000 y_0=1000000
5119|ETRS89 / NTM zone 19|proj=tmerc lat_0=58 lon_0=19.5 k=1 x_0=100000 y_0=1000000
5120|ETRS89 / NTM zone 20|proj=tmerc lat_0=58 lon_0=20.5 k=1 x_0=100000 y_0=1000000
5121|ETRS89 / NTM zone 21|proj=tmerc lat_0=58 lon_0=21.5 k=1 x_0=100000 y_0=1000000
5122|ETRS89 / NTM zone 22|proj=tmerc lat_0=58 lon_0=22.5 k=1 x_0=100000 y_0=1000000
5123|ETRS89 / NTM zone 23|proj=tmerc lat_0=58 lon_0=23.5 k=1 x_0=100000 y_0=1000000
5124|ETRS89 / NTM zone 24|proj=tmerc lat_0=58 lon_0=24.5 k=1 x_0=100000 y_0=1000000
5125|ETRS89 / NTM zone 25|proj=tmerc lat_0=58 lon_0=25.5 k=1 x_0=100000 y_0=1000000
5126|ETRS89 / NTM zone 26|proj=tmerc lat_0=58 lon_0=26.5 k=1 x_0=100000 y_0=1000000
5127|ETRS89 / NTM zone 27|proj=tmerc lat_0=58 lon_0=27.5 k=1 x_0=100000 y_0=1000000
5128|ETRS89 / NTM zone 28|proj=tmerc lat_0=58 lon_0=28.5 k=1 x_0=100000 y_0=1000000
5129|ETRS89 / NTM zone 29|proj=tmerc lat_0=58 lon_0=29.5 k=1 x_0=100000 y_0=1000000
5130|ETRS89 / NTM zone 30|proj=tmerc lat_0=58 lon_0=30.5 k=1 x_0=100000 y_0=1000000
5243|ETRS89 / LCC Germany (E-N)|=4839
5316|ETRS89 / Faroe TM|proj=tmerc lat_0=0 lon_0=-7 k=0.999997 x_0=200000 y_0=-6000000
5649|ETRS89 / UTM zone 31N (zE-N)|proj=tmerc lat_0=0 lon_0=3 k=0.9996 x_0=31500000 y_0=0
5650|ETRS89 / UTM zone 33N (zE-N)|proj=tmerc lat_0=0 lon_0=15 k=0.9996 x_0=33500000 y_0=0
5651|ETRS89 / UTM zone 31N (N-zE)|=5649
5652|ETRS89 / UTM zone 32N (N-zE)|=4647
5653|ETRS89 / UTM zone 33N (N-zE)|=5650
6069|ETRS89 / EPSG Arctic zone 2-22|proj=lcc lat_0=82.0584248888889 lon_0=16 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=22500000 y_0=2500000
6070|ETRS89 / EPSG Arctic zone 3-11|proj=lcc lat_0=78.7073375277778 lon_0=21 lat_1=80.3333333333333 lat_2=77 x_0=11500000 y_0=3500000
6071|ETRS89 / EPSG Arctic zone 4-26|proj=lcc lat_0=75.3644033055556 lon_0=10 lat_1=77 lat_2=73.6666666666667 x_0=26500000 y_0=4500000
6072|ETRS89 / EPSG Arctic zone 4-28|proj=lcc lat_0=75.3644033055556 lon_0=34 lat_1=77 lat_2=73.6666666666667 x_0=28500000 y_0=4500000
6073|ETRS89 / EPSG Arctic zone 5-11|proj=lcc lat_0=72.0250091944445 lon_0=14 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=11500000 y_0=5500000
6074|ETRS89 / EPSG Arctic zone 5-13|proj=lcc lat_0=72.0250091944445 lon_0=34 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=13500000 y_0=5500000
6125|ETRS89 / EPSG Arctic zone 5-47|proj=lcc lat_0=72.0250091944445 lon_0=-5 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=47500000 y_0=5500000
6870|ETRS89 / Albania TM 2010|=3127
6962|ETRS89 / Albania LCC 2010|proj=lcc lat_0=41 lon_0=20 lat_1=39 lat_2=43 x_0=0 y_0=0
8395|ETRS89 / Gauss-Kruger CM 9E|proj=tmerc lat_0=0 lon_0=9 k=1 x_0=500000 y_0=0
25884|ETRS89 / TM Baltic93|proj=tmerc lat_0=0 lon_0=24 k=0.9996 x_0=500000 y_0=0
@SWEREF99
3006|SWEREF99 TM|=3045
3007|SWEREF99 12 00|proj=tmerc lat_0=0 lon_0=12 k=1 x_0=150000 y_0=0
3008|SWEREF99 13 30|proj=tmerc lat_0=0 lon_0=13.5 k=1 x_0=150000 y_0=0
3009|SWEREF99 15 00|proj=tmerc lat_0=0 lon_0=15 k=1 x_0=150000 y_0=0
3010|SWEREF99 16 30|proj=tmerc lat_0=0 lon_0=16.5 k=1 x_0=150000 y_0=0
3011|SWEREF99 18 00|proj=tmerc lat_0=0 lon_0=18 k=1 x_0=150000 y_0=0
3012|SWEREF99 14 15|proj=tmerc lat_0=0 lon_0=14.25 k=1 x_0=150000 y_0=0
3013|SWEREF99 15 45|proj=tmerc lat_0=0 lon_0=15.75 k=1 x_0=150000 y_0=0
3014|SWEREF99 17 15|proj=tmerc lat_0=0 lon_0=17.25 k=1 x_0=150000 y_0=0
3015|SWEREF99 18 45|proj=tmerc lat_0=0 lon_0=18.75 k=1 x_0=150000 y_0=0
3016|SWEREF99 20 15|proj=tmerc lat_0=0 lon_0=20.25 k=1 x_0=150000 y_0=0
3017|SWEREF99 21 45|proj=tmerc lat_0=0 lon_0=21.75 k=1 x_0=150000 y_0=0
3018|SWEREF99 23 15|proj=tmerc lat_0=0 lon_0=23.25 k=1 x_0=150000 y_0=0
3152|ST74|proj=tmerc lat_0=0 lon_0=18.05779 k=0.99999425 x_0=100178.1808 y_0=-6500614.7836
3845|SWEREF99 / RT90 7.5 gon V emulation|proj=tmerc lat_0=0 lon_0=11.30625 k=1.000006 x_0=1500025.141 y_0=-667.282
3846|SWEREF99 / RT90 5 gon V emulation|proj=tmerc lat_0=0 lon_0=13.5562666666667 k=1.0000058 x_0=1500044.695 y_0=-667.13
3847|SWEREF99 / RT90 2.5 gon V emulation|proj=tmerc lat_0=0 lon_0=15.8062845294444 k=1.00000561024 x_0=1500064.274 y_0=-667.711
3848|SWEREF99 / RT90 0 gon emulation|proj=tmerc lat_0=0 lon_0=18.0563 k=1.0000054 x_0=1500083.521 y_0=-668.844
3849|SWEREF99 / RT90 2.5 gon O emulation|proj=tmerc lat_0=0 lon_0=20.3063166666667 k=1.0000052 x_0=1500102.765 y_0=-670.706
3850|SWEREF99 / RT90 5 gon O emulation|proj=tmerc lat_0=0 lon_0=22.5563333333333 k=1.0000049 x_0=1500121.846 y_0=-672.557
3854|County ST74|proj=tmerc lat_0=0 lon_0=18.05787 k=0.99999506 x_0=100182.7406 y_0=-6500620.1207
4619|SWEREF99|=4269
@Rete Dinamica Nazionale 2008
6706|RDN2008|=4269
6707|RDN2008 / UTM zone 32N (N-E)|=3044
6708|RDN2008 / UTM zone 33N (N-E)|=3045
6709|RDN2008 / UTM zone 34N (N-E)|=3046
6875|RDN2008 / Italy zone (N-E)|proj=tmerc lat_0=0 lon_0=12 k=0.9985 x_0=7000000 y_0=0
6876|RDN2008 / Zone 12 (N-E)|proj=tmerc lat_0=0 lon_0=12 k=1 x_0=3000000 y_0=0
7791|RDN2008 / UTM zone 32N|=3044
7792|RDN2008 / UTM zone 33N|=3045
7793|RDN2008 / UTM zone 34N|=3046
7794|RDN2008 / Italy zone (E-N)|=6875
7795|RDN2008 / Zone 12 (E-N)|=6876
@Reseau Geodesique Francais 1993 v2
9777|RGF93 v2|=4269
9779|RGF93 v2 (lon-lat)|=4269
9793|RGF93 v2 / Lambert-93|proj=lcc lat_0=46.5 lon_0=3 lat_1=49 lat_2=44 x_0=700000 y_0=6600000
9822|RGF93 v2 / CC42|proj=lcc lat_0=42 lon_0=3 lat_1=41.25 lat_2=42.75 x_0=1700000 y_0=1200000
9823|RGF93 v2 / CC43|proj=lcc lat_0=43 lon_0=3 lat_1=42.25 lat_2=43.75 x_0=1700000 y_0=2200000
9824|RGF93 v2 / CC44|proj=lcc lat_0=44 lon_0=3 lat_1=43.25 lat_2=44.75 x_0=1700000 y_0=3200000
9825|RGF93 v2 / CC45|proj=lcc lat_0=45 lon_0=3 lat_1=44.25 lat_2=45.75 x_0=1700000 y_0=4200000
9826|RGF93 v2 / CC46|proj=lcc lat_0=46 lon_0=3 lat_1=45.25 lat_2=46.75 x_0=1700000 y_0=5200000
9827|RGF93 v2 / CC47|proj=lcc lat_0=47 lon_0=3 lat_1=46.25 lat_2=47.75 x_0=1700000 y_0=6200000
9828|RGF93 v2 / CC48|proj=lcc lat_0=48 lon_0=3 lat_1=47.25 lat_2=48.75 x_0=1700000 y_0=7200000
9829|RGF93 v2 / CC49|proj=lcc lat_0=49 lon_0=3 lat_1=48.25 lat_2=49.75 x_0=1700000 y_0=8200000
9830|RGF93 v2 / CC50|proj=lcc lat_0=50 lon_0=3 lat_1=49.25 lat_2=50.75 x_0=1700000 y_0=9200000
@Reseau Geodesique Francais 1993 v2b
9782|RGF93 v2b|=4269
9784|RGF93 v2b (lon-lat)|=4269
9794|RGF93 v2b / Lambert-93|=9793
9842|RGF93 v2b / CC42|=9822
9843|RGF93 v2b / CC43|=9823
9844|RGF93 v2b / CC44|=9824
9845|RGF93 v2b / CC45|=9825
9846|RGF93 v2b / CC46|=9826
9847|RGF93 v2b / CC47|=9827
9848|RGF93 v2b / CC48|=9828
9849|RGF93 v2b / CC49|=9829
9850|RGF93 v2b / CC50|=9830
@Reseau Geodesique Francais 1993 v1
2154|RGF93 v1 / Lambert-93|=9793
3942|RGF93 v1 / CC42|=9822
3943|RGF93 v1 / CC43|=9823
3944|RGF93 v1 / CC44|=9824
3945|RGF93 v1 / CC45|=9825
3946|RGF93 v1 / CC46|=9826
3947|RGF93 v1 / CC47|=9827
3948|RGF93 v1 / CC48|=9828
3949|RGF93 v1 / CC49|=9829
3950|RGF93 v1 / CC50|=9830
4171|RGF93 v1|=4269
7084|RGF93 v1 (lon-lat)|=4269
@IRENET95
2157|IRENET95 / Irish Transverse Mercator|proj=tmerc lat_0=53.5 lon_0=-8 k=0.99982 x_0=600000 y_0=750000
2158|IRENET95 / UTM zone 29N|=3041
4173|IRENET95|=4269
@ETRF2000 Poland
2176|ETRF2000-PL / CS2000/15|proj=tmerc lat_0=0 lon_0=15 k=0.999923 x_0=5500000 y_0=0
2177|ETRF2000-PL / CS2000/18|proj=tmerc lat_0=0 lon_0=18 k=0.999923 x_0=6500000 y_0=0
2178|ETRF2000-PL / CS2000/21|proj=tmerc lat_0=0 lon_0=21 k=0.999923 x_0=7500000 y_0=0
2179|ETRF2000-PL / CS2000/24|proj=tmerc lat_0=0 lon_0=24 k=0.999923 x_0=8500000 y_0=0
2180|ETRF2000-PL / CS92|proj=tmerc lat_0=0 lon_0=19 k=0.9993 x_0=500000 y_0=-5300000
9702|ETRF2000-PL|=4269
@Slovenia Geodetic Datum 1996
3794|Slovenia 1996 / Slovene National Grid|proj=tmerc lat_0=0 lon_0=15 k=0.9999 x_0=500000 y_0=-5000000
4765|Slovenia 1996|=4269
8687|Slovenia 1996 / UTM zone 33N|=3045
@Croatian Terrestrial Reference System
3765|HTRS96 / Croatia TM|proj=tmerc lat_0=0 lon_0=16.5 k=0.9999 x_0=500000 y_0=0
3766|HTRS96 / Croatia LCC|proj=lcc lat_0=0 lon_0=16.5 lat_1=45.9166666666667 lat_2=43.0833333333333 x_0=0 y_0=0
3767|HTRS96 / UTM zone 33N|=3045
3768|HTRS96 / UTM zone 34N|=3046
4761|HTRS96|=4269
@Lithuania 1994 (ETRS89)
3346|LKS94 / Lithuania TM|proj=tmerc lat_0=0 lon_0=24 k=0.9998 x_0=500000 y_0=0
4669|LKS94|=4269
@Latvia 1992
3059|LKS92 / Latvia TM|proj=tmerc lat_0=0 lon_0=24 k=0.9996 x_0=500000 y_0=-6000000
4661|LKS92|=4269
@Estonia 1997
3301|Estonian Coordinate System of 1997|proj=lcc lat_0=57.5175539305556 lon_0=24 lat_1=59.3333333333333 lat_2=58 x_0=500000 y_0=6375000
4180|EST97|=4269
@Bulgaria Geodetic System 2005
7798|BGS2005|=4269
7799|BGS2005 / UTM zone 34N (N-E)|=3046
7800|BGS2005 / UTM zone 35N (N-E)|=3047
7801|BGS2005 / CCS2005|proj=lcc lat_0=42.6678756833333 lon_0=25.5 lat_1=42 lat_2=43.3333333333333 x_0=500000 y_0=4725824.3591
7803|BGS2005 / UTM zone 34N|=3046
7805|BGS2005 / UTM zone 36N|=3048
9391|BGS2005 / UTM zone 35N|=3047
@Red Geodesica de Canarias 1995
4081|REGCAN95|=4269
4082|REGCAN95 / UTM zone 27N|proj=utm zone=27
4083|REGCAN95 / UTM zone 28N|=3040
5634|REGCAN95 / LCC Europe|=3034
5635|REGCAN95 / LAEA Europe|=3035
@Islands Net 1993
3057|ISN93 / Lambert 1993|proj=lcc lat_0=65 lon_0=-19 lat_1=64.25 lat_2=65.75 x_0=500000 y_0=500000
4659|ISN93|=4269
@Islands Net 2004
5324|ISN2004|=4269
5325|ISN2004 / Lambert 2004|proj=lcc lat_0=65 lon_0=-19 lat_1=64.25 lat_2=65.75 x_0=1700000 y_0=300000
5638|ISN2004 / LAEA Europe|=3035
5639|ISN2004 / LCC Europe|=3034
9947|ISN2004 / LAEA Iceland|proj=laea lat_0=65 lon_0=-19 x_0=1700000 y_0=1300000
@Islands Net 2016
8086|ISN2016|=4269
8088|ISN2016 / Lambert 2016|proj=lcc lat_0=65 lon_0=-19 lat_1=64.25 lat_2=65.75 x_0=2700000 y_0=300000
9039|ISN2016 / LAEA Europe|=3035
9040|ISN2016 / LCC Europe|=3034
@Turkish National Reference Frame
5252|TUREF|=4269
5253|TUREF / TM27|=3134
5254|TUREF / TM30|=3137
5255|TUREF / TM33|proj=tmerc lat_0=0 lon_0=33 k=1 x_0=500000 y_0=0
5256|TUREF / TM36|proj=tmerc lat_0=0 lon_0=36 k=1 x_0=500000 y_0=0
5257|TUREF / TM39|proj=tmerc lat_0=0 lon_0=39 k=1 x_0=500000 y_0=0
5258|TUREF / TM42|proj=tmerc lat_0=0 lon_0=42 k=1 x_0=500000 y_0=0
5259|TUREF / TM45|proj=tmerc lat_0=0 lon_0=45 k=1 x_0=500000 y_0=0
5269|TUREF / 3-degree Gauss-Kruger zone 9|proj=tmerc lat_0=0 lon_0=27 k=1 x_0=9500000 y_0=0
5270|TUREF / 3-degree Gauss-Kruger zone 10|proj=tmerc lat_0=0 lon_0=30 k=1 x_0=10500000 y_0=0
5271|TUREF / 3-degree Gauss-Kruger zone 11|proj=tmerc lat_0=0 lon_0=33 k=1 x_0=11500000 y_0=0
5272|TUREF / 3-degree Gauss-Kruger zone 12|proj=tmerc lat_0=0 lon_0=36 k=1 x_0=12500000 y_0=0
5273|TUREF / 3-degree Gauss-Kruger zone 13|proj=tmerc lat_0=0 lon_0=39 k=1 x_0=13500000 y_0=0
5274|TUREF / 3-degree Gauss-Kruger zone 14|proj=tmerc lat_0=0 lon_0=42 k=1 x_0=14500000 y_0=0
5275|TUREF / 3-degree Gauss-Kruger zone 15|proj=tmerc lat_0=0 lon_0=45 k=1 x_0=15500000 y_0=0
5636|TUREF / LAEA Europe|=3035
5637|TUREF / LCC Europe|=3034
@Geocentric Datum of Australia 1994
3107|GDA94 / SA Lambert|proj=lcc lat_0=-32 lon_0=135 lat_1=-28 lat_2=-36 x_0=1000000 y_0=2000000
3111|GDA94 / Vicgrid|proj=lcc lat_0=-37 lon_0=145 lat_1=-36 lat_2=-38 x_0=2500000 y_0=2500000
3112|GDA94 / Geoscience Australia Lambert|proj=lcc lat_0=0 lon_0=134 lat_1=-18 lat_2=-36 x_0=0 y_0=0
3113|GDA94 / BCSG02|proj=tmerc lat_0=-28 lon_0=153 k=0.99999 x_0=50000 y_0=100000
3308|GDA94 / NSW Lambert|proj=lcc lat_0=-33.25 lon_0=147 lat_1=-30.75 lat_2=-35.75 x_0=9300000 y_0=4500000
3577|GDA94 / Australian Albers|proj=aea lat_0=0 lon_0=132 lat_1=-18 lat_2=-36 x_0=0 y_0=0
4283|GDA94|=4269
6721|GDA94 / CIG94|proj=tmerc lat_0=0 lon_0=105.625 k=1.00002514 x_0=50000 y_0=1300000
6723|GDA94 / CKIG94|proj=tmerc lat_0=0 lon_0=96.875 k=0.99999387 x_0=50000 y_0=1500000
6736|GDA94 / MGA zone 46|proj=utm zone=46 south
6737|GDA94 / MGA zone 47|proj=utm zone=47 south
6738|GDA94 / MGA zone 59|proj=utm zone=59 south
8391|GDA94 / WEIPA94|proj=tmerc lat_0=0 lon_0=141 k=0.999929 x_0=300000 y_0=2000000
28348|GDA94 / MGA zone 48|proj=utm zone=48 south
28349|GDA94 / MGA zone 49|proj=utm zone=49 south
28350|GDA94 / MGA zone 50|proj=utm zone=50 south
28351|GDA94 / MGA zone 51|proj=utm zone=51 south
28352|GDA94 / MGA zone 52|proj=utm zone=52 south
28353|GDA94 / MGA zone 53|proj=utm zone=53 south
28354|GDA94 / MGA zone 54|proj=utm zone=54 south
28355|GDA94 / MGA zone 55|proj=utm zone=55 south
28356|GDA94 / MGA zone 56|proj=utm zone=56 south
28357|GDA94 / MGA zone 57|proj=utm zone=57 south
28358|GDA94 / MGA zone 58|proj=utm zone=58 south
@Geocentric Datum of Australia 2020
7844|GDA2020|=4269
7845|GDA2020 / GA LCC|=3112
7846|GDA2020 / MGA zone 46|=6736
7847|GDA2020 / MGA zone 47|=6737
7848|GDA2020 / MGA zone 48|=28348
7849|GDA2020 / MGA zone 49|=28349
7850|GDA2020 / MGA zone 50|=28350
7851|GDA2020 / MGA zone 51|=28351
7852|GDA2020 / MGA zone 52|=28352
7853|GDA2020 / MGA zone 53|=28353
7854|GDA2020 / MGA zone 54|=28354
7855|GDA2020 / MGA zone 55|=28355
7856|GDA2020 / MGA zone 56|=28356
7857|GDA2020 / MGA zone 57|=28357
7858|GDA2020 / MGA zone 58|=28358
7859|GDA2020 / MGA zone 59|=6738
7899|GDA2020 / Vicgrid|=3111
8013|GDA2020 / ALB2020|proj=tmerc lat_0=0 lon_0=117.883333333333 k=1.0000044 x_0=50000 y_0=4100000
8014|GDA2020 / BIO2020|proj=tmerc lat_0=0 lon_0=115.25 k=1.0000022 x_0=60000 y_0=2700000
8015|GDA2020 / BRO2020|proj=tmerc lat_0=0 lon_0=122.333333333333 k=1.00000298 x_0=50000 y_0=2300000
8016|GDA2020 / BCG2020|proj=tmerc lat_0=0 lon_0=115.433333333333 k=0.99999592 x_0=50000 y_0=4000000
8017|GDA2020 / CARN2020|proj=tmerc lat_0=0 lon_0=113.666666666667 k=0.99999796 x_0=50000 y_0=3050000
8018|GDA2020 / CIG2020|proj=tmerc lat_0=0 lon_0=105.625 k=1.00002514 x_0=50000 y_0=1400000
8019|GDA2020 / CKIG2020|proj=tmerc lat_0=0 lon_0=96.875 k=0.99999387 x_0=50000 y_0=1600000
8020|GDA2020 / COL2020|proj=tmerc lat_0=0 lon_0=115.933333333333 k=1.000019 x_0=40000 y_0=4100000
8021|GDA2020 / ESP2020|proj=tmerc lat_0=0 lon_0=121.883333333333 k=1.0000055 x_0=50000 y_0=4050000
8022|GDA2020 / EXM2020|proj=tmerc lat_0=0 lon_0=114.066666666667 k=1.00000236 x_0=50000 y_0=2750000
8023|GDA2020 / GCG2020|proj=tmerc lat_0=0 lon_0=114.583333333333 k=1.00000628 x_0=50000 y_0=3450000
8024|GDA2020 / GOLD2020|proj=tmerc lat_0=0 lon_0=121.5 k=1.00004949 x_0=60000 y_0=3800000
8025|GDA2020 / JCG2020|proj=tmerc lat_0=0 lon_0=114.983333333333 k=1.00000314 x_0=50000 y_0=3650000
8026|GDA2020 / KALB2020|proj=tmerc lat_0=0 lon_0=114.315277777778 k=1.000014 x_0=55000 y_0=3700000
8027|GDA2020 / KAR2020|proj=tmerc lat_0=0 lon_0=116.933333333333 k=0.9999989 x_0=50000 y_0=2550000
8028|GDA2020 / KUN2020|proj=tmerc lat_0=0 lon_0=128.75 k=1.0000165 x_0=50000 y_0=2100000
8029|GDA2020 / LCG2020|proj=tmerc lat_0=0 lon_0=115.366666666667 k=1.00000157 x_0=50000 y_0=3750000
8030|GDA2020 / MRCG2020|proj=tmerc lat_0=0 lon_0=115.166666666667 k=1.0000055 x_0=50000 y_0=4050000
8031|GDA2020 / PCG2020|proj=tmerc lat_0=0 lon_0=115.816666666667 k=0.99999906 x_0=50000 y_0=3900000
8032|GDA2020 / PHG2020|proj=tmerc lat_0=0 lon_0=118.6 k=1.00000135 x_0=50000 y_0=2500000
8058|GDA2020 / NSW Lambert|=3308
8059|GDA2020 / SA Lambert|=3107
9473|GDA2020 / Australian Albers|=3577
20047|GDA2020 / BCSG2020|proj=tmerc lat_0=-28 lon_0=153 k=0.99999 x_0=150000 y_0=200000
@New Zealand Geodetic Datum 2000
2105|NZGD2000 / Mount Eden 2000|proj=tmerc lat_0=-36.8797222222222 lon_0=174.764166666667 k=0.9999 x_0=400000 y_0=800000
2106|NZGD2000 / Bay of Plenty 2000|proj=tmerc lat_0=-37.7611111111111 lon_0=176.466111111111 k=1 x_0=400000 y_0=800000
2107|NZGD2000 / Poverty Bay 2000|proj=tmerc lat_0=-38.6244444444444 lon_0=177.885555555556 k=1 x_0=400000 y_0=800000
2108|NZGD2000 / Hawkes Bay 2000|proj=tmerc lat_0=-39.6508333333333 lon_0=176.673611111111 k=1 x_0=400000 y_0=800000
2109|NZGD2000 / Taranaki 2000|proj=tmerc lat_0=-39.1355555555556 lon_0=174.227777777778 k=1 x_0=400000 y_0=800000
2110|NZGD2000 / Tuhirangi 2000|proj=tmerc lat_0=-39.5122222222222 lon_0=175.64 k=1 x_0=400000 y_0=800000
2111|NZGD2000 / Wanganui 2000|proj=tmerc lat_0=-40.2419444444444 lon_0=175.488055555556 k=1 x_0=400000 y_0=800000
2112|NZGD2000 / Wairarapa 2000|proj=tmerc lat_0=-40.9252777777778 lon_0=175.647222222222 k=1 x_0=400000 y_0=800000
2113|NZGD2000 / Wellington 2000|proj=tmerc lat_0=-41.3011111111111 lon_0=174.776388888889 k=1 x_0=400000 y_0=800000
2114|NZGD2000 / Collingwood 2000|proj=tmerc lat_0=-40.7147222222222 lon_0=172.671944444444 k=1 x_0=400000 y_0=800000
2115|NZGD2000 / Nelson 2000|proj=tmerc lat_0=-41.2744444444444 lon_0=173.299166666667 k=1 x_0=400000 y_0=800000
2116|NZGD2000 / Karamea 2000|proj=tmerc lat_0=-41.2897222222222 lon_0=172.108888888889 k=1 x_0=400000 y_0=800000
2117|NZGD2000 / Buller 2000|proj=tmerc lat_0=-41.8105555555556 lon_0=171.581111111111 k=1 x_0=400000 y_0=800000
2118|NZGD2000 / Grey 2000|proj=tmerc lat_0=-42.3336111111111 lon_0=171.549722222222 k=1 x_0=400000 y_0=800000
2119|NZGD2000 / Amuri 2000|proj=tmerc lat_0=-42.6888888888889 lon_0=173.01 k=1 x_0=400000 y_0=800000
2120|NZGD2000 / Marlborough 2000|proj=tmerc lat_0=-41.5444444444444 lon_0=173.801944444444 k=1 x_0=400000 y_0=800000
2121|NZGD2000 / Hokitika 2000|proj=tmerc lat_0=-42.8861111111111 lon_0=170.979722222222 k=1 x_0=400000 y_0=800000
2122|NZGD2000 / Okarito 2000|proj=tmerc lat_0=-43.11 lon_0=170.260833333333 k=1 x_0=400000 y_0=800000
2123|NZGD2000 / Jacksons Bay 2000|proj=tmerc lat_0=-43.9777777777778 lon_0=168.606111111111 k=1 x_0=400000 y_0=800000
2124|NZGD2000 / Mount Pleasant 2000|proj=tmerc lat_0=-43.5905555555556 lon_0=172.726944444444 k=1 x_0=400000 y_0=800000
2125|NZGD2000 / Gawler 2000|proj=tmerc lat_0=-43.7486111111111 lon_0=171.360555555556 k=1 x_0=400000 y_0=800000
2126|NZGD2000 / Timaru 2000|proj=tmerc lat_0=-44.4019444444444 lon_0=171.057222222222 k=1 x_0=400000 y_0=800000
2127|NZGD2000 / Lindis Peak 2000|proj=tmerc lat_0=-44.735 lon_0=169.4675 k=1 x_0=400000 y_0=800000
2128|NZGD2000 / Mount Nicholas 2000|proj=tmerc lat_0=-45.1327777777778 lon_0=168.398611111111 k=1 x_0=400000 y_0=800000
2129|NZGD2000 / Mount York 2000|proj=tmerc lat_0=-45.5636111111111 lon_0=167.738611111111 k=1 x_0=400000 y_0=800000
2130|NZGD2000 / Observation Point 2000|proj=tmerc lat_0=-45.8161111111111 lon_0=170.628333333333 k=1 x_0=400000 y_0=800000
2131|NZGD2000 / North Taieri 2000|proj=tmerc lat_0=-45.8613888888889 lon_0=170.2825 k=0.99996 x_0=400000 y_0=800000
2132|NZGD2000 / Bluff 2000|proj=tmerc lat_0=-46.6 lon_0=168.342777777778 k=1 x_0=400000 y_0=800000
2133|NZGD2000 / UTM zone 58S|=28358
2134|NZGD2000 / UTM zone 59S|=6738
2135|NZGD2000 / UTM zone 60S|proj=utm zone=60 south
2193|NZGD2000 / New Zealand Transverse Mercator 2000|proj=tmerc lat_0=0 lon_0=173 k=0.9996 x_0=1600000 y_0=10000000
3764|NZGD2000 / Chatham Island Circuit 2000|proj=tmerc lat_0=-44 lon_0=-176.5 k=1 x_0=400000 y_0=800000
3788|NZGD2000 / Auckland Islands TM 2000|proj=tmerc lat_0=0 lon_0=166 k=1 x_0=3500000 y_0=10000000
3789|NZGD2000 / Campbell Island TM 2000|proj=tmerc lat_0=0 lon_0=169 k=1 x_0=3500000 y_0=10000000
3790|NZGD2000 / Antipodes Islands TM 2000|proj=tmerc lat_0=0 lon_0=179 k=1 x_0=3500000 y_0=10000000
3791|NZGD2000 / Raoul Island TM 2000|proj=tmerc lat_0=0 lon_0=-178 k=1 x_0=3500000 y_0=10000000
3793|NZGD2000 / Chatham Islands TM 2000|proj=tmerc lat_0=0 lon_0=-176.5 k=1 x_0=3500000 y_0=10000000
3851|NZGD2000 / NZCS2000|proj=lcc lat_0=-41 lon_0=173 lat_1=-37.5 lat_2=-44.5 x_0=3000000 y_0=7000000
4167|NZGD2000|=4269
5700|NZGD2000 / UTM zone 1S|proj=utm zone=1 south
@Japanese Geodetic Datum 2000
2443|JGD2000 / Japan Plane Rectangular CS I|proj=tmerc lat_0=33 lon_0=129.5 k=0.9999 x_0=0 y_0=0
2444|JGD2000 / Japan Plane Rectangular CS II|proj=tmerc lat_0=33 lon_0=131 k=0.9999 x_0=0 y_0=0
2445|JGD2000 / Japan Plane Rectangular CS III|proj=tmerc lat_0=36 lon_0=132.166666666667 k=0.9999 x_0=0 y_0=0
2446|JGD2000 / Japan Plane Rectangular CS IV|proj=tmerc lat_0=33 lon_0=133.5 k=0.9999 x_0=0 y_0=0
2447|JGD2000 / Japan Plane Rectangular CS V|proj=tmerc lat_0=36 lon_0=134.333333333333 k=0.9999 x_0=0 y_0=0
2448|JGD2000 / Japan Plane Rectangular CS VI|proj=tmerc lat_0=36 lon_0=136 k=0.9999 x_0=0 y_0=0
2449|JGD2000 / Japan Plane Rectangular CS VII|proj=tmerc lat_0=36 lon_0=137.166666666667 k=0.9999 x_0=0 y_0=0
2450|JGD2000 / Japan Plane Rectangular CS VIII|proj=tmerc lat_0=36 lon_0=138.5 k=0.9999 x_0=0 y_0=0
2451|JGD2000 / Japan Plane Rectangular CS IX|proj=tmerc lat_0=36 lon_0=139.833333333333 k=0.9999 x_0=0 y_0=0
2452|JGD2000 / Japan Plane Rectangular CS X|proj=tmerc lat_0=40 lon_0=140.833333333333 k=0.9999 x_0=0 y_0=0
2453|JGD2000 / Japan Plane Rectangular CS XI|proj=tmerc lat_0=44 lon_0=140.25 k=0.9999 x_0=0 y_0=0
2454|JGD2000 / Japan Plane Rectangular CS XII|proj=tmerc lat_0=44 lon_0=142.25 k=0.9999 x_0=0 y_0=0
2455|JGD2000 / Japan Plane Rectangular CS XIII|proj=tmerc lat_0=44 lon_0=144.25 k=0.9999 x_0=0 y_0=0
2456|JGD2000 / Japan Plane Rectangular CS XIV|proj=tmerc lat_0=26 lon_0=142 k=0.9999 x_0=0 y_0=0
2457|JGD2000 / Japan Plane Rectangular CS XV|proj=tmerc lat_0=26 lon_0=127.5 k=0.9999 x_0=0 y_0=0
2458|JGD2000 / Japan Plane Rectangular CS XVI|proj=tmerc lat_0=26 lon_0=124 k=0.9999 x_0=0 y_0=0
2459|JGD2000 / Japan Plane Rectangular CS XVII|proj=tmerc lat_0=26 lon_0=131 k=0.9999 x_0=0 y_0=0
2460|JGD2000 / Japan Plane Rectangular CS XVIII|proj=tmerc lat_0=20 lon_0=136 k=0.9999 x_0=0 y_0=0
2461|JGD2000 / Japan Plane Rectangular CS XIX|proj=tmerc lat_0=26 lon_0=154 k=0.9999 x_0=0 y_0=0
3097|JGD2000 / UTM zone 51N|proj=utm zone=51
3098|JGD2000 / UTM zone 52N|proj=utm zone=52
3099|JGD2000 / UTM zone 53N|proj=utm zone=53
3100|JGD2000 / UTM zone 54N|=8692
3101|JGD2000 / UTM zone 55N|=8693
4612|JGD2000|=4269
@Japanese Geodetic Datum 2011
6668|JGD2011|=4269
6669|JGD2011 / Japan Plane Rectangular CS I|=2443
6670|JGD2011 / Japan Plane Rectangular CS II|=2444
6671|JGD2011 / Japan Plane Rectangular CS III|=2445
6672|JGD2011 / Japan Plane Rectangular CS IV|=2446
6673|JGD2011 / Japan Plane Rectangular CS V|=2447
6674|JGD2011 / Japan Plane Rectangular CS VI|=2448
6675|JGD2011 / Japan Plane Rectangular CS VII|=2449
6676|JGD2011 / Japan Plane Rectangular CS VIII|=2450
6677|JGD2011 / Japan Plane Rectangular CS IX|=2451
6678|JGD2011 / Japan Plane Rectangular CS X|=2452
6679|JGD2011 / Japan Plane Rectangular CS XI|=2453
6680|JGD2011 / Japan Plane Rectangular CS XII|=2454
6681|JGD2011 / Japan Plane Rectangular CS XIII|=2455
6682|JGD2011 / Japan Plane Rectangular CS XIV|=2456
6683|JGD2011 / Japan Plane Rectangular CS XV|=2457
6684|JGD2011 / Japan Plane Rectangular CS XVI|=2458
6685|JGD2011 / Japan Plane Rectangular CS XVII|=2459
6686|JGD2011 / Japan Plane Rectangular CS XVIII|=2460
6687|JGD2011 / Japan Plane Rectangular CS XIX|=2461
6688|JGD2011 / UTM zone 51N|=3097
6689|JGD2011 / UTM zone 52N|=3098
6690|JGD2011 / UTM zone 53N|=3099
6691|JGD2011 / UTM zone 54N|=8692
6692|JGD2011 / UTM zone 55N|=8693
@Geocentric datum of Korea
4737|Korea 2000|=4269
5179|Korea 2000 / Unified CS|proj=tmerc lat_0=38 lon_0=127.5 k=0.9996 x_0=1000000 y_0=2000000
5180|Korea 2000 / West Belt|proj=tmerc lat_0=38 lon_0=125 k=1 x_0=200000 y_0=500000
5181|Korea 2000 / Central Belt|proj=tmerc lat_0=38 lon_0=127 k=1 x_0=200000 y_0=500000
5182|Korea 2000 / Central Belt Jeju|proj=tmerc lat_0=38 lon_0=127 k=1 x_0=200000 y_0=550000
5183|Korea 2000 / East Belt|proj=tmerc lat_0=38 lon_0=129 k=1 x_0=200000 y_0=500000
5184|Korea 2000 / East Sea Belt|proj=tmerc lat_0=38 lon_0=131 k=1 x_0=200000 y_0=500000
5185|Korea 2000 / West Belt 2010|proj=tmerc lat_0=38 lon_0=125 k=1 x_0=200000 y_0=600000
5186|Korea 2000 / Central Belt 2010|proj=tmerc lat_0=38 lon_0=127 k=1 x_0=200000 y_0=600000
5187|Korea 2000 / East Belt 2010|proj=tmerc lat_0=38 lon_0=129 k=1 x_0=200000 y_0=600000
5188|Korea 2000 / East Sea Belt 2010|proj=tmerc lat_0=38 lon_0=131 k=1 x_0=200000 y_0=600000
@China 2000
4490|China Geodetic Coordinate System 2000|=4269
4491|CGCS2000 / Gauss-Kruger zone 13|proj=tmerc lat_0=0 lon_0=75 k=1 x_0=13500000 y_0=0
4492|CGCS2000 / Gauss-Kruger zone 14|proj=tmerc lat_0=0 lon_0=81 k=1 x_0=14500000 y_0=0
4493|CGCS2000 / Gauss-Kruger zone 15|proj=tmerc lat_0=0 lon_0=87 k=1 x_0=15500000 y_0=0
4494|CGCS2000 / Gauss-Kruger zone 16|proj=tmerc lat_0=0 lon_0=93 k=1 x_0=16500000 y_0=0
4495|CGCS2000 / Gauss-Kruger zone 17|proj=tmerc lat_0=0 lon_0=99 k=1 x_0=17500000 y_0=0
4496|CGCS2000 / Gauss-Kruger zone 18|proj=tmerc lat_0=0 lon_0=105 k=1 x_0=18500000 y_0=0
4497|CGCS2000 / Gauss-Kruger zone 19|proj=tmerc lat_0=0 lon_0=111 k=1 x_0=19500000 y_0=0
4498|CGCS2000 / Gauss-Kruger zone 20|proj=tmerc lat_0=0 lon_0=117 k=1 x_0=20500000 y_0=0
4499|CGCS2000 / Gauss-Kruger zone 21|proj=tmerc lat_0=0 lon_0=123 k=1 x_0=21500000 y_0=0
4500|CGCS2000 / Gauss-Kruger zone 22|proj=tmerc lat_0=0 lon_0=129 k=1 x_0=22500000 y_0=0
4501|CGCS2000 / Gauss-Kruger zone 23|proj=tmerc lat_0=0 lon_0=135 k=1 x_0=23500000 y_0=0
4502|CGCS2000 / Gauss-Kruger CM 75E|proj=tmerc lat_0=0 lon_0=75 k=1 x_0=500000 y_0=0
4503|CGCS2000 / Gauss-Kruger CM 81E|proj=tmerc lat_0=0 lon_0=81 k=1 x_0=500000 y_0=0
4504|CGCS2000 / Gauss-Kruger CM 87E|proj=tmerc lat_0=0 lon_0=87 k=1 x_0=500000 y_0=0
4505|CGCS2000 / Gauss-Kruger CM 93E|proj=tmerc lat_0=0 lon_0=93 k=1 x_0=500000 y_0=0
4506|CGCS2000 / Gauss-Kruger CM 99E|proj=tmerc lat_0=0 lon_0=99 k=1 x_0=500000 y_0=0
4507|CGCS2000 / Gauss-Kruger CM 105E|proj=tmerc lat_0=0 lon_0=105 k=1 x_0=500000 y_0=0
4508|CGCS2000 / Gauss-Kruger CM 111E|proj=tmerc lat_0=0 lon_0=111 k=1 x_0=500000 y_0=0
4509|CGCS2000 / Gauss-Kruger CM 117E|proj=tmerc lat_0=0 lon_0=117 k=1 x_0=500000 y_0=0
4510|CGCS2000 / Gauss-Kruger CM 123E|proj=tmerc lat_0=0 lon_0=123 k=1 x_0=500000 y_0=0
4511|CGCS2000 / Gauss-Kruger CM 129E|proj=tmerc lat_0=0 lon_0=129 k=1 x_0=500000 y_0=0
4512|CGCS2000 / Gauss-Kruger CM 135E|proj=tmerc lat_0=0 lon_0=135 k=1 x_0=500000 y_0=0
4513|CGCS2000 / 3-degree Gauss-Kruger zone 25|proj=tmerc lat_0=0 lon_0=75 k=1 x_0=25500000 y_0=0
4514|CGCS2000 / 3-degree Gauss-Kruger zone 26|proj=tmerc lat_0=0 lon_0=78 k=1 x_0=26500000 y_0=0
4515|CGCS2000 / 3-degree Gauss-Kruger zone 27|proj=tmerc lat_0=0 lon_0=81 k=1 x_0=27500000 y_0=0
4516|CGCS2000 / 3-degree Gauss-Kruger zone 28|proj=tmerc lat_0=0 lon_0=84 k=1 x_0=28500000 y_0=0
4517|CGCS2000 / 3-degree Gauss-Kruger zone 29|proj=tmerc lat_0=0 lon_0=87 k=1 x_0=29500000 y_0=0
4518|CGCS2000 / 3-degree Gauss-Kruger zone 30|proj=tmerc lat_0=0 lon_0=90 k=1 x_0=30500000 y_0=0
4519|CGCS2000 / 3-degree Gauss-Kruger zone 31|proj=tmerc lat_0=0 lon_0=93 k=1 x_0=31500000 y_0=0
4520|CGCS2000 / 3-degree Gauss-Kruger zone 32|proj=tmerc lat_0=0 lon_0=96 k=1 x_0=32500000 y_0=0
4521|CGCS2000 / 3-degree Gauss-Kruger zone 33|proj=tmerc lat_0=0 lon_0=99 k=1 x_0=33500000 y_0=0
4522|CGCS2000 / 3-degree Gauss-Kruger zone 34|proj=tmerc lat_0=0 lon_0=102 k=1 x_0=34500000 y_0=0
4523|CGCS2000 / 3-degree Gauss-Kruger zone 35|proj=tmerc lat_0=0 lon_0=105 k=1 x_0=35500000 y_0=0
4524|CGCS2000 / 3-degree Gauss-Kruger zone 36|proj=tmerc lat_0=0 lon_0=108 k=1 x_0=36500000 y_0=0
4525|CGCS2000 / 3-degree Gauss-Kruger zone 37|proj=tmerc lat_0=0 lon_0=111 k=1 x_0=37500000 y_0=0
4526|CGCS2000 / 3-degree Gauss-Kruger zone 38|proj=tmerc lat_0=0 lon_0=114 k=1 x_0=38500000 y_0=0
4527|CGCS2000 / 3-degree Gauss-Kruger zone 39|proj=tmerc lat_0=0 lon_0=117 k=1 x_0=39500000 y_0=0
4528|CGCS2000 / 3-degree Gauss-Kruger zone 40|proj=tmerc lat_0=0 lon_0=120 k=1 x_0=40500000 y_0=0
4529|CGCS2000 / 3-degree Gauss-Kruger zone 41|proj=tmerc lat_0=0 lon_0=123 k=1 x_0=41500000 y_0=0
4530|CGCS2000 / 3-degree Gauss-Kruger zone 42|proj=tmerc lat_0=0 lon_0=126 k=1 x_0=42500000 y_0=0
4531|CGCS2000 / 3-degree Gauss-Kruger zone 43|proj=tmerc lat_0=0 lon_0=129 k=1 x_0=43500000 y_0=0
4532|CGCS2000 / 3-degree Gauss-Kruger zone 44|proj=tmerc lat_0=0 lon_0=132 k=1 x_0=44500000 y_0=0
4533|CGCS2000 / 3-degree Gauss-Kruger zone 45|proj=tmerc lat_0=0 lon_0=135 k=1 x_0=45500000 y_0=0
4534|CGCS2000 / 3-degree Gauss-Kruger CM 75E|=4502
4535|CGCS2000 / 3-degree Gauss-Kruger CM 78E|proj=tmerc lat_0=0 lon_0=78 k=1 x_0=500000 y_0=0
4536|CGCS2000 / 3-degree Gauss-Kruger CM 81E|=4503
4537|CGCS2000 / 3-degree Gauss-Kruger CM 84E|proj=tmerc lat_0=0 lon_0=84 k=1 x_0=500000 y_0=0
4538|CGCS2000 / 3-degree Gauss-Kruger CM 87E|=4504
4539|CGCS2000 / 3-degree Gauss-Kruger CM 90E|proj=tmerc lat_0=0 lon_0=90 k=1 x_0=500000 y_0=0
4540|CGCS2000 / 3-degree Gauss-Kruger CM 93E|=4505
4541|CGCS2000 / 3-degree Gauss-Kruger CM 96E|proj=tmerc lat_0=0 lon_0=96 k=1 x_0=500000 y_0=0
4542|CGCS2000 / 3-degree Gauss-Kruger CM 99E|=4506
4543|CGCS2000 / 3-degree Gauss-Kruger CM 102E|proj=tmerc lat_0=0 lon_0=102 k=1 x_0=500000 y_0=0
4544|CGCS2000 / 3-degree Gauss-Kruger CM 105E|=4507
4545|CGCS2000 / 3-degree Gauss-Kruger CM 108E|proj=tmerc lat_0=0 lon_0=108 k=1 x_0=500000 y_0=0
4546|CGCS2000 / 3-degree Gauss-Kruger CM 111E|=4508
4547|CGCS2000 / 3-degree Gauss-Kruger CM 114E|proj=tmerc lat_0=0 lon_0=114 k=1 x_0=500000 y_0=0
4548|CGCS2000 / 3-degree Gauss-Kruger CM 117E|=4509
4549|CGCS2000 / 3-degree Gauss-Kruger CM 120E|proj=tmerc lat_0=0 lon_0=120 k=1 x_0=500000 y_0=0
4550|CGCS2000 / 3-degree Gauss-Kruger CM 123E|=4510
4551|CGCS2000 / 3-degree Gauss-Kruger CM 126E|proj=tmerc lat_0=0 lon_0=126 k=1 x_0=500000 y_0=0
4552|CGCS2000 / 3-degree Gauss-Kruger CM 129E|=4511
4553|CGCS2000 / 3-degree Gauss-Kruger CM 132E|proj=tmerc lat_0=0 lon_0=132 k=1 x_0=500000 y_0=0
4554|CGCS2000 / 3-degree Gauss-Kruger CM 135E|=4512
@Taiwan Datum 1997
3824|TWD97|=4269
3825|TWD97 / TM2 zone 119|proj=tmerc lat_0=0 lon_0=119 k=0.9999 x_0=250000 y_0=0
3826|TWD97 / TM2 zone 121|proj=tmerc lat_0=0 lon_0=121 k=0.9999 x_0=250000 y_0=0
@SVY21
3414|SVY21 / Singapore TM|proj=tmerc lat_0=1.36666666666667 lon_0=103.833333333333 k=1 x_0=28001.642 y_0=38744.572 ellps=WGS84
4757|SVY21|proj=longlat ellps=WGS84
@Sistema de Referencia Geocentrico para las AmericaS 2000
4674|SIRGAS 2000|=4269
5396|SIRGAS 2000 / UTM zone 26S|proj=utm zone=26 south
5641|SIRGAS 2000 / Brazil Mercator|proj=merc lat_ts=-2 lon_0=-43 x_0=5000000 y_0=10000000
6210|SIRGAS 2000 / UTM zone 23N|=9709
6211|SIRGAS 2000 / UTM zone 24N|=9712
31965|SIRGAS 2000 / UTM zone 11N|=3741
31966|SIRGAS 2000 / UTM zone 12N|=3742
31967|SIRGAS 2000 / UTM zone 13N|=3743
31968|SIRGAS 2000 / UTM zone 14N|=3744
31969|SIRGAS 2000 / UTM zone 15N|=3745
31970|SIRGAS 2000 / UTM zone 16N|=3746
31971|SIRGAS 2000 / UTM zone 17N|=3747
31972|SIRGAS 2000 / UTM zone 18N|=3748
31973|SIRGAS 2000 / UTM zone 19N|=3749
31974|SIRGAS 2000 / UTM zone 20N|=2961
31975|SIRGAS 2000 / UTM zone 21N|=2962
31976|SIRGAS 2000 / UTM zone 22N|=3761
31977|SIRGAS 2000 / UTM zone 17S|proj=utm zone=17 south
31978|SIRGAS 2000 / UTM zone 18S|proj=utm zone=18 south
31979|SIRGAS 2000 / UTM zone 19S|proj=utm zone=19 south
31980|SIRGAS 2000 / UTM zone 20S|proj=utm zone=20 south
31981|SIRGAS 2000 / UTM zone 21S|proj=utm zone=21 south
31982|SIRGAS 2000 / UTM zone 22S|proj=utm zone=22 south
31983|SIRGAS 2000 / UTM zone 23S|proj=utm zone=23 south
31984|SIRGAS 2000 / UTM zone 24S|proj=utm zone=24 south
31985|SIRGAS 2000 / UTM zone 25S|proj=utm zone=25 south
@Sistema de Referencia Geocentrico para America del Sur 1995
4170|SIRGAS 1995|=4269
31986|SIRGAS 1995 / UTM zone 17N|=3747
31987|SIRGAS 1995 / UTM zone 18N|=3748
31988|SIRGAS 1995 / UTM zone 19N|=3749
31989|SIRGAS 1995 / UTM zone 20N|=2961
31990|SIRGAS 1995 / UTM zone 21N|=2962
31991|SIRGAS 1995 / UTM zone 22N|=3761
31992|SIRGAS 1995 / UTM zone 17S|=31977
31993|SIRGAS 1995 / UTM zone 18S|=31978
31994|SIRGAS 1995 / UTM zone 19S|=31979
31995|SIRGAS 1995 / UTM zone 20S|=31980
31996|SIRGAS 1995 / UTM zone 21S|=31981
31997|SIRGAS 1995 / UTM zone 22S|=31982
31998|SIRGAS 1995 / UTM zone 23S|=31983
31999|SIRGAS 1995 / UTM zone 24S|=31984
32000|SIRGAS 1995 / UTM zone 25S|=31985
@Marco Geocentrico Nacional de Referencia
3114|MAGNA-SIRGAS / Colombia Far West zone|proj=tmerc lat_0=4.59620041666667 lon_0=-80.0775079166667 k=1 x_0=1000000 y_0=1000000
3115|MAGNA-SIRGAS / Colombia West zone|proj=tmerc lat_0=4.59620041666667 lon_0=-77.0775079166667 k=1 x_0=1000000 y_0=1000000
3116|MAGNA-SIRGAS / Colombia Bogota zone|proj=tmerc lat_0=4.59620041666667 lon_0=-74.0775079166667 k=1 x_0=1000000 y_0=1000000
3117|MAGNA-SIRGAS / Colombia East Central zone|proj=tmerc lat_0=4.59620041666667 lon_0=-71.0775079166667 k=1 x_0=1000000 y_0=1000000
3118|MAGNA-SIRGAS / Colombia East zone|proj=tmerc lat_0=4.59620041666667 lon_0=-68.0775079166667 k=1 x_0=1000000 y_0=1000000
4686|MAGNA-SIRGAS|=4269
9377|MAGNA-SIRGAS / Origen-Nacional|proj=tmerc lat_0=4 lon_0=-73 k=0.9992 x_0=5000000 y_0=2000000
@Posiciones Geodesicas Argentinas 2007
5340|POSGAR 2007|=4757
5343|POSGAR 2007 / Argentina 1|proj=tmerc lat_0=-90 lon_0=-72 k=1 x_0=1500000 y_0=0 ellps=WGS84
5344|POSGAR 2007 / Argentina 2|proj=tmerc lat_0=-90 lon_0=-69 k=1 x_0=2500000 y_0=0 ellps=WGS84
5345|POSGAR 2007 / Argentina 3|proj=tmerc lat_0=-90 lon_0=-66 k=1 x_0=3500000 y_0=0 ellps=WGS84
5346|POSGAR 2007 / Argentina 4|proj=tmerc lat_0=-90 lon_0=-63 k=1 x_0=4500000 y_0=0 ellps=WGS84
5347|POSGAR 2007 / Argentina 5|proj=tmerc lat_0=-90 lon_0=-60 k=1 x_0=5500000 y_0=0 ellps=WGS84
5348|POSGAR 2007 / Argentina 6|proj=tmerc lat_0=-90 lon_0=-57 k=1 x_0=6500000 y_0=0 ellps=WGS84
5349|POSGAR 2007 / Argentina 7|proj=tmerc lat_0=-90 lon_0=-54 k=1 x_0=7500000 y_0=0 ellps=WGS84
9265|POSGAR 2007 / UTM zone 19S|proj=utm zone=19 south ellps=WGS84
9498|POSGAR 2007 / CABA 2019|proj=tmerc lat_0=-34.6292666666667 lon_0=-58.4633083333333 k=1 x_0=20000 y_0=70000 ellps=WGS84
@Posiciones Geodesicas Argentinas 1998
4190|POSGAR 98|=4269
22171|POSGAR 98 / Argentina 1|proj=tmerc lat_0=-90 lon_0=-72 k=1 x_0=1500000 y_0=0
22172|POSGAR 98 / Argentina 2|proj=tmerc lat_0=-90 lon_0=-69 k=1 x_0=2500000 y_0=0
22173|POSGAR 98 / Argentina 3|proj=tmerc lat_0=-90 lon_0=-66 k=1 x_0=3500000 y_0=0
22174|POSGAR 98 / Argentina 4|proj=tmerc lat_0=-90 lon_0=-63 k=1 x_0=4500000 y_0=0
22175|POSGAR 98 / Argentina 5|proj=tmerc lat_0=-90 lon_0=-60 k=1 x_0=5500000 y_0=0
22176|POSGAR 98 / Argentina 6|proj=tmerc lat_0=-90 lon_0=-57 k=1 x_0=6500000 y_0=0
22177|POSGAR 98 / Argentina 7|proj=tmerc lat_0=-90 lon_0=-54 k=1 x_0=7500000 y_0=0
@World Geodetic System 1984 ensemble
2309|WGS 84 / TM 116 SE|proj=tmerc lat_0=0 lon_0=116 k=0.9996 x_0=500000 y_0=10000000 ellps=WGS84
2310|WGS 84 / TM 132 SE|proj=tmerc lat_0=0 lon_0=132 k=0.9996 x_0=500000 y_0=10000000 ellps=WGS84
2311|WGS 84 / TM 6 NE|proj=tmerc lat_0=0 lon_0=6 k=0.9996 x_0=500000 y_0=0 ellps=WGS84
3031|WGS 84 / Antarctic Polar Stereographic|proj=stere lat_0=-90 lat_ts=-71 lon_0=0 x_0=0 y_0=0 ellps=WGS84
3032|WGS 84 / Australian Antarctic Polar Stereographic|proj=stere lat_0=-90 lat_ts=-71 lon_0=70 x_0=6000000 y_0=6000000 ellps=WGS84
3033|WGS 84 / Australian Antarctic Lambert|proj=lcc lat_0=-50 lon_0=70 lat_1=-68.5 lat_2=-74.5 x_0=6000000 y_0=6000000 ellps=WGS84
3204|WGS 84 / SCAR IMW SP19-20|proj=lcc lat_0=-90 lon_0=-66 lat_1=-60.6666666666667 lat_2=-63.3333333333333 x_0=0 y_0=0 ellps=WGS84
3205|WGS 84 / SCAR IMW SP21-22|proj=lcc lat_0=-90 lon_0=-54 lat_1=-60.6666666666667 lat_2=-63.3333333333333 x_0=0 y_0=0 ellps=WGS84
3206|WGS 84 / SCAR IMW SP23-24|proj=lcc lat_0=-90 lon_0=-42 lat_1=-60.6666666666667 lat_2=-63.3333333333333 x_0=0 y_0=0 ellps=WGS84
3207|WGS 84 / SCAR IMW SQ01-02|proj=lcc lat_0=-90 lon_0=-174 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3208|WGS 84 / SCAR IMW SQ19-20|proj=lcc lat_0=-90 lon_0=-66 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3209|WGS 84 / SCAR IMW SQ21-22|proj=lcc lat_0=-90 lon_0=-54 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3210|WGS 84 / SCAR IMW SQ37-38|proj=lcc lat_0=-90 lon_0=42 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3211|WGS 84 / SCAR IMW SQ39-40|proj=lcc lat_0=-90 lon_0=54 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3212|WGS 84 / SCAR IMW SQ41-42|proj=lcc lat_0=-90 lon_0=66 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3213|WGS 84 / SCAR IMW SQ43-44|proj=lcc lat_0=-90 lon_0=78 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3214|WGS 84 / SCAR IMW SQ45-46|proj=lcc lat_0=-90 lon_0=90 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3215|WGS 84 / SCAR IMW SQ47-48|proj=lcc lat_0=-90 lon_0=102 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3216|WGS 84 / SCAR IMW SQ49-50|proj=lcc lat_0=-90 lon_0=114 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3217|WGS 84 / SCAR IMW SQ51-52|proj=lcc lat_0=-90 lon_0=126 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3218|WGS 84 / SCAR IMW SQ53-54|proj=lcc lat_0=-90 lon_0=138 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3219|WGS 84 / SCAR IMW SQ55-56|proj=lcc lat_0=-90 lon_0=150 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3220|WGS 84 / SCAR IMW SQ57-58|proj=lcc lat_0=-90 lon_0=162 lat_1=-64.6666666666667 lat_2=-67.3333333333333 x_0=0 y_0=0 ellps=WGS84
3221|WGS 84 / SCAR IMW SR13-14|proj=lcc lat_0=-90 lon_0=-102 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3222|WGS 84 / SCAR IMW SR15-16|proj=lcc lat_0=-90 lon_0=-90 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3223|WGS 84 / SCAR IMW SR17-18|proj=lcc lat_0=-90 lon_0=-78 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3224|WGS 84 / SCAR IMW SR19-20|proj=lcc lat_0=-90 lon_0=-66 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3225|WGS 84 / SCAR IMW SR27-28|proj=lcc lat_0=-90 lon_0=-18 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3226|WGS 84 / SCAR IMW SR29-30|proj=lcc lat_0=-90 lon_0=-6 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3227|WGS 84 / SCAR IMW SR31-32|proj=lcc lat_0=-90 lon_0=6 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3228|WGS 84 / SCAR IMW SR33-34|proj=lcc lat_0=-90 lon_0=18 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3229|WGS 84 / SCAR IMW SR35-36|proj=lcc lat_0=-90 lon_0=30 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3230|WGS 84 / SCAR IMW SR37-38|proj=lcc lat_0=-90 lon_0=42 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3231|WGS 84 / SCAR IMW SR39-40|proj=lcc lat_0=-90 lon_0=54 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3232|WGS 84 / SCAR IMW SR41-42|proj=lcc lat_0=-90 lon_0=66 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3233|WGS 84 / SCAR IMW SR43-44|proj=lcc lat_0=-90 lon_0=78 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3234|WGS 84 / SCAR IMW SR45-46|proj=lcc lat_0=-90 lon_0=90 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3235|WGS 84 / SCAR IMW SR47-48|proj=lcc lat_0=-90 lon_0=102 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3236|WGS 84 / SCAR IMW SR49-50|proj=lcc lat_0=-90 lon_0=114 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3237|WGS 84 / SCAR IMW SR51-52|proj=lcc lat_0=-90 lon_0=126 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3238|WGS 84 / SCAR IMW SR53-54|proj=lcc lat_0=-90 lon_0=138 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3239|WGS 84 / SCAR IMW SR55-56|proj=lcc lat_0=-90 lon_0=150 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3240|WGS 84 / SCAR IMW SR57-58|proj=lcc lat_0=-90 lon_0=162 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3241|WGS 84 / SCAR IMW SR59-60|proj=lcc lat_0=-90 lon_0=174 lat_1=-68.6666666666667 lat_2=-71.3333333333333 x_0=0 y_0=0 ellps=WGS84
3242|WGS 84 / SCAR IMW SS04-06|proj=lcc lat_0=-90 lon_0=-153 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3243|WGS 84 / SCAR IMW SS07-09|proj=lcc lat_0=-90 lon_0=-135 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3244|WGS 84 / SCAR IMW SS10-12|proj=lcc lat_0=-90 lon_0=-117 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3245|WGS 84 / SCAR IMW SS13-15|proj=lcc lat_0=-90 lon_0=-99 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3246|WGS 84 / SCAR IMW SS16-18|proj=lcc lat_0=-90 lon_0=-81 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3247|WGS 84 / SCAR IMW SS19-21|proj=lcc lat_0=-90 lon_0=-63 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3248|WGS 84 / SCAR IMW SS25-27|proj=lcc lat_0=-90 lon_0=-27 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3249|WGS 84 / SCAR IMW SS28-30|proj=lcc lat_0=-90 lon_0=-9 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3250|WGS 84 / SCAR IMW SS31-33|proj=lcc lat_0=-90 lon_0=9 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3251|WGS 84 / SCAR IMW SS34-36|proj=lcc lat_0=-90 lon_0=27 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3252|WGS 84 / SCAR IMW SS37-39|proj=lcc lat_0=-90 lon_0=45 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3253|WGS 84 / SCAR IMW SS40-42|proj=lcc lat_0=-90 lon_0=63 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3254|WGS 84 / SCAR IMW SS43-45|proj=lcc lat_0=-90 lon_0=81 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3255|WGS 84 / SCAR IMW SS46-48|proj=lcc lat_0=-90 lon_0=99 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3256|WGS 84 / SCAR IMW SS49-51|proj=lcc lat_0=-90 lon_0=117 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3257|WGS 84 / SCAR IMW SS52-54|proj=lcc lat_0=-90 lon_0=135 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3258|WGS 84 / SCAR IMW SS55-57|proj=lcc lat_0=-90 lon_0=153 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3259|WGS 84 / SCAR IMW SS58-60|proj=lcc lat_0=-90 lon_0=171 lat_1=-72.6666666666667 lat_2=-75.3333333333333 x_0=0 y_0=0 ellps=WGS84
3260|WGS 84 / SCAR IMW ST01-04|proj=lcc lat_0=-90 lon_0=-168 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3261|WGS 84 / SCAR IMW ST05-08|proj=lcc lat_0=-90 lon_0=-144 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3262|WGS 84 / SCAR IMW ST09-12|proj=lcc lat_0=-90 lon_0=-120 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3263|WGS 84 / SCAR IMW ST13-16|proj=lcc lat_0=-90 lon_0=-96 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3264|WGS 84 / SCAR IMW ST17-20|proj=lcc lat_0=-90 lon_0=-72 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3265|WGS 84 / SCAR IMW ST21-24|proj=lcc lat_0=-90 lon_0=-48 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3266|WGS 84 / SCAR IMW ST25-28|proj=lcc lat_0=-90 lon_0=-24 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3267|WGS 84 / SCAR IMW ST29-32|proj=lcc lat_0=-90 lon_0=0 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3268|WGS 84 / SCAR IMW ST33-36|proj=lcc lat_0=-90 lon_0=24 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3269|WGS 84 / SCAR IMW ST37-40|proj=lcc lat_0=-90 lon_0=48 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3270|WGS 84 / SCAR IMW ST41-44|proj=lcc lat_0=-90 lon_0=72 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3271|WGS 84 / SCAR IMW ST45-48|proj=lcc lat_0=-90 lon_0=96 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3272|WGS 84 / SCAR IMW ST49-52|proj=lcc lat_0=-90 lon_0=120 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3273|WGS 84 / SCAR IMW ST53-56|proj=lcc lat_0=-90 lon_0=144 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3274|WGS 84 / SCAR IMW ST57-60|proj=lcc lat_0=-90 lon_0=168 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3275|WGS 84 / SCAR IMW SU01-05|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-165 x_0=0 y_0=0 ellps=WGS84
3276|WGS 84 / SCAR IMW SU06-10|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-135 x_0=0 y_0=0 ellps=WGS84
3277|WGS 84 / SCAR IMW SU11-15|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-105 x_0=0 y_0=0 ellps=WGS84
3278|WGS 84 / SCAR IMW SU16-20|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-75 x_0=0 y_0=0 ellps=WGS84
3279|WGS 84 / SCAR IMW SU21-25|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-45 x_0=0 y_0=0 ellps=WGS84
3280|WGS 84 / SCAR IMW SU26-30|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-15 x_0=0 y_0=0 ellps=WGS84
3281|WGS 84 / SCAR IMW SU31-35|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=15 x_0=0 y_0=0 ellps=WGS84
3282|WGS 84 / SCAR IMW SU36-40|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=45 x_0=0 y_0=0 ellps=WGS84
3283|WGS 84 / SCAR IMW SU41-45|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=75 x_0=0 y_0=0 ellps=WGS84
3284|WGS 84 / SCAR IMW SU46-50|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=105 x_0=0 y_0=0 ellps=WGS84
3285|WGS 84 / SCAR IMW SU51-55|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=135 x_0=0 y_0=0 ellps=WGS84
3286|WGS 84 / SCAR IMW SU56-60|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=165 x_0=0 y_0=0 ellps=WGS84
3287|WGS 84 / SCAR IMW SV01-10|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-150 x_0=0 y_0=0 ellps=WGS84
3288|WGS 84 / SCAR IMW SV11-20|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-90 x_0=0 y_0=0 ellps=WGS84
3289|WGS 84 / SCAR IMW SV21-30|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=-30 x_0=0 y_0=0 ellps=WGS84
3290|WGS 84 / SCAR IMW SV31-40|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=30 x_0=0 y_0=0 ellps=WGS84
3291|WGS 84 / SCAR IMW SV41-50|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=90 x_0=0 y_0=0 ellps=WGS84
3292|WGS 84 / SCAR IMW SV51-60|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=150 x_0=0 y_0=0 ellps=WGS84
3293|WGS 84 / SCAR IMW SW01-60|proj=stere lat_0=-90 lat_ts=-80.2386111111111 lon_0=0 x_0=0 y_0=0 ellps=WGS84
3294|WGS 84 / USGS Transantarctic Mountains|proj=lcc lat_0=-78 lon_0=162 lat_1=-76.6666666666667 lat_2=-79.3333333333333 x_0=0 y_0=0 ellps=WGS84
3395|WGS 84 / World Mercator|proj=merc lon_0=0 k=1 x_0=0 y_0=0 ellps=WGS84
3413|WGS 84 / NSIDC Sea Ice Polar Stereographic North|proj=stere lat_0=90 lat_ts=70 lon_0=-45 x_0=0 y_0=0 ellps=WGS84
3571|WGS 84 / North Pole LAEA Bering Sea|proj=laea lat_0=90 lon_0=180 x_0=0 y_0=0 ellps=WGS84
3572|WGS 84 / North Pole LAEA Alaska|proj=laea lat_0=90 lon_0=-150 x_0=0 y_0=0 ellps=WGS84
3573|WGS 84 / North Pole LAEA Canada|proj=laea lat_0=90 lon_0=-100 x_0=0 y_0=0 ellps=WGS84
3574|WGS 84 / North Pole LAEA Atlantic|proj=laea lat_0=90 lon_0=-40 x_0=0 y_0=0 ellps=WGS84
3575|WGS 84 / North Pole LAEA Europe|proj=laea lat_0=90 lon_0=10 x_0=0 y_0=0 ellps=WGS84
3576|WGS 84 / North Pole LAEA Russia|proj=laea lat_0=90 lon_0=90 x_0=0 y_0=0 ellps=WGS84
3762|WGS 84 / South Georgia Lambert|proj=lcc lat_0=-55 lon_0=-37 lat_1=-54 lat_2=-54.75 x_0=0 y_0=0 ellps=WGS84
3832|WGS 84 / PDC Mercator|proj=merc lon_0=150 k=1 x_0=0 y_0=0 ellps=WGS84
3976|WGS 84 / NSIDC Sea Ice Polar Stereographic South|proj=stere lat_0=-90 lat_ts=-70 lon_0=0 x_0=0 y_0=0 ellps=WGS84
3994|WGS 84 / Mercator 41|proj=merc lat_ts=-41 lon_0=100 x_0=0 y_0=0 ellps=WGS84
3995|WGS 84 / Arctic Polar Stereographic|proj=stere lat_0=90 lat_ts=71 lon_0=0 x_0=0 y_0=0 ellps=WGS84
3996|WGS 84 / IBCAO Polar Stereographic|proj=stere lat_0=90 lat_ts=75 lon_0=0 x_0=0 y_0=0 ellps=WGS84
3997|WGS 84 / Dubai Local TM|proj=tmerc lat_0=0 lon_0=55.3333333333333 k=1 x_0=500000 y_0=0 ellps=WGS84
4037|WGS 84 / TMzn35N|proj=utm zone=35 ellps=WGS84
4038|WGS 84 / TMzn36N|proj=utm zone=36 ellps=WGS84
4326|WGS 84|=4757
4462|WGS 84 / Australian Centre for Remote Sensing Lambert|proj=lcc lat_0=-27 lon_0=132 lat_1=-18 lat_2=-36 x_0=0 y_0=0 ellps=WGS84
4826|WGS 84 / Cape Verde National|proj=lcc lat_0=15.8333333333333 lon_0=-24 lat_1=15 lat_2=16.6666666666667 x_0=161587.83 y_0=128511.202 ellps=WGS84
5041|WGS 84 / UPS North (E,N)|proj=stere lat_0=90 lon_0=0 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5042|WGS 84 / UPS South (E,N)|proj=stere lat_0=-90 lon_0=0 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5223|WGS 84 / Gabon TM|proj=tmerc lat_0=0 lon_0=12 k=0.9996 x_0=500000 y_0=500000 ellps=WGS84
5523|WGS 84 / Gabon TM 2011|proj=tmerc lat_0=0 lon_0=11.5 k=0.9996 x_0=1500000 y_0=5500000 ellps=WGS84
5842|WGS 84 / TM 12 SE|proj=tmerc lat_0=0 lon_0=12 k=0.9996 x_0=500000 y_0=10000000 ellps=WGS84
5921|WGS 84 / EPSG Arctic Regional zone A1|proj=lcc lat_0=81.317226 lon_0=-111 lat_1=85 lat_2=77 x_0=0 y_0=0 ellps=WGS84
5922|WGS 84 / EPSG Arctic Regional zone A2|proj=lcc lat_0=81.317226 lon_0=-39 lat_1=85 lat_2=77 x_0=0 y_0=0 ellps=WGS84
5923|WGS 84 / EPSG Arctic Regional zone A3|proj=lcc lat_0=81.317226 lon_0=33 lat_1=85 lat_2=77 x_0=0 y_0=0 ellps=WGS84
5924|WGS 84 / EPSG Arctic Regional zone A4|proj=lcc lat_0=81.317226 lon_0=105 lat_1=85 lat_2=77 x_0=0 y_0=0 ellps=WGS84
5925|WGS 84 / EPSG Arctic Regional zone A5|proj=lcc lat_0=81.317226 lon_0=177 lat_1=85 lat_2=77 x_0=0 y_0=0 ellps=WGS84
5926|WGS 84 / EPSG Arctic Regional zone B1|proj=lcc lat_0=73.1557408611111 lon_0=-111 lat_1=77 lat_2=69 x_0=0 y_0=0 ellps=WGS84
5927|WGS 84 / EPSG Arctic Regional zone B2|proj=lcc lat_0=73.1557408611111 lon_0=-39 lat_1=77 lat_2=69 x_0=0 y_0=0 ellps=WGS84
5928|WGS 84 / EPSG Arctic Regional zone B3|proj=lcc lat_0=73.1557408611111 lon_0=33 lat_1=77 lat_2=69 x_0=0 y_0=0 ellps=WGS84
5929|WGS 84 / EPSG Arctic Regional zone B4|proj=lcc lat_0=73.1557408611111 lon_0=105 lat_1=77 lat_2=69 x_0=0 y_0=0 ellps=WGS84
5930|WGS 84 / EPSG Arctic Regional zone B5|proj=lcc lat_0=73.1557408611111 lon_0=177 lat_1=77 lat_2=69 x_0=0 y_0=0 ellps=WGS84
5931|WGS 84 / EPSG Arctic Regional zone C1|proj=lcc lat_0=65.1012708888889 lon_0=-111 lat_1=69 lat_2=61 x_0=0 y_0=0 ellps=WGS84
5932|WGS 84 / EPSG Arctic Regional zone C2|proj=lcc lat_0=65.1012708888889 lon_0=-39 lat_1=69 lat_2=61 x_0=0 y_0=0 ellps=WGS84
5933|WGS 84 / EPSG Arctic Regional zone C3|proj=lcc lat_0=65.1012708888889 lon_0=33 lat_1=69 lat_2=61 x_0=0 y_0=0 ellps=WGS84
5934|WGS 84 / EPSG Arctic Regional zone C4|proj=lcc lat_0=65.1012708888889 lon_0=105 lat_1=69 lat_2=61 x_0=0 y_0=0 ellps=WGS84
5935|WGS 84 / EPSG Arctic Regional zone C5|proj=lcc lat_0=65.1012708888889 lon_0=177 lat_1=69 lat_2=61 x_0=0 y_0=0 ellps=WGS84
5936|WGS 84 / EPSG Alaska Polar Stereographic|proj=stere lat_0=90 lon_0=-150 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5937|WGS 84 / EPSG Canada Polar Stereographic|proj=stere lat_0=90 lon_0=-100 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5938|WGS 84 / EPSG Greenland Polar Stereographic|proj=stere lat_0=90 lon_0=-33 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5939|WGS 84 / EPSG Norway Polar Stereographic|proj=stere lat_0=90 lon_0=18 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
5940|WGS 84 / EPSG Russia Polar Stereographic|proj=stere lat_0=90 lon_0=105 k=0.994 x_0=2000000 y_0=2000000 ellps=WGS84
6075|WGS 84 / EPSG Arctic zone 2-24|proj=lcc lat_0=82.0584248888889 lon_0=53 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=24500000 y_0=2500000 ellps=WGS84
6076|WGS 84 / EPSG Arctic zone 2-26|proj=lcc lat_0=82.0584248888889 lon_0=93 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=26500000 y_0=2500000 ellps=WGS84
6077|WGS 84 / EPSG Arctic zone 3-13|proj=lcc lat_0=78.7073375277778 lon_0=52 lat_1=80.3333333333333 lat_2=77 x_0=13500000 y_0=3500000 ellps=WGS84
6078|WGS 84 / EPSG Arctic zone 3-15|proj=lcc lat_0=78.7073375277778 lon_0=83 lat_1=80.3333333333333 lat_2=77 x_0=15500000 y_0=3500000 ellps=WGS84
6079|WGS 84 / EPSG Arctic zone 3-17|proj=lcc lat_0=78.7073375277778 lon_0=114 lat_1=80.3333333333333 lat_2=77 x_0=17500000 y_0=3500000 ellps=WGS84
6080|WGS 84 / EPSG Arctic zone 3-19|proj=lcc lat_0=78.7073375277778 lon_0=145 lat_1=80.3333333333333 lat_2=77 x_0=19500000 y_0=3500000 ellps=WGS84
6081|WGS 84 / EPSG Arctic zone 4-30|proj=lcc lat_0=75.3644033055556 lon_0=58 lat_1=77 lat_2=73.6666666666667 x_0=30500000 y_0=4500000 ellps=WGS84
6082|WGS 84 / EPSG Arctic zone 4-32|proj=lcc lat_0=75.3644033055556 lon_0=82 lat_1=77 lat_2=73.6666666666667 x_0=32500000 y_0=4500000 ellps=WGS84
6083|WGS 84 / EPSG Arctic zone 4-34|proj=lcc lat_0=75.3644033055556 lon_0=106 lat_1=77 lat_2=73.6666666666667 x_0=34500000 y_0=4500000 ellps=WGS84
6084|WGS 84 / EPSG Arctic zone 4-36|proj=lcc lat_0=75.3644033055556 lon_0=130 lat_1=77 lat_2=73.6666666666667 x_0=36500000 y_0=4500000 ellps=WGS84
6085|WGS 84 / EPSG Arctic zone 4-38|proj=lcc lat_0=75.3644033055556 lon_0=154 lat_1=77 lat_2=73.6666666666667 x_0=38500000 y_0=4500000 ellps=WGS84
6086|WGS 84 / EPSG Arctic zone 4-40|proj=lcc lat_0=75.3644033055556 lon_0=179 lat_1=77 lat_2=73.6666666666667 x_0=40500000 y_0=4500000 ellps=WGS84
6087|WGS 84 / EPSG Arctic zone 5-15|proj=lcc lat_0=72.0250091944445 lon_0=54 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=15500000 y_0=5500000 ellps=WGS84
6088|WGS 84 / EPSG Arctic zone 5-17|proj=lcc lat_0=72.0250091944445 lon_0=74 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=17500000 y_0=5500000 ellps=WGS84
6089|WGS 84 / EPSG Arctic zone 5-19|proj=lcc lat_0=72.0250091944445 lon_0=95 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=19500000 y_0=5500000 ellps=WGS84
6090|WGS 84 / EPSG Arctic zone 5-21|proj=lcc lat_0=72.0250091944445 lon_0=116 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=21500000 y_0=5500000 ellps=WGS84
6091|WGS 84 / EPSG Arctic zone 5-23|proj=lcc lat_0=72.0250091944445 lon_0=137 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=23500000 y_0=5500000 ellps=WGS84
6092|WGS 84 / EPSG Arctic zone 5-25|proj=lcc lat_0=72.0250091944445 lon_0=158 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=25500000 y_0=5500000 ellps=WGS84
6093|WGS 84 / EPSG Arctic zone 5-27|proj=lcc lat_0=72.0250091944445 lon_0=179 lat_1=73.6666666666667 lat_2=70.3333333333333 x_0=27500000 y_0=5500000 ellps=WGS84
6115|WGS 84 / EPSG Arctic zone 1-27|proj=lcc lat_0=85.4371183333333 lon_0=30 lat_1=87 lat_2=83.6666666666667 x_0=27500000 y_0=1500000 ellps=WGS84
6116|WGS 84 / EPSG Arctic zone 1-29|proj=lcc lat_0=85.4371183333333 lon_0=90 lat_1=87 lat_2=83.6666666666667 x_0=29500000 y_0=1500000 ellps=WGS84
6117|WGS 84 / EPSG Arctic zone 1-31|proj=lcc lat_0=85.4371183333333 lon_0=150 lat_1=87 lat_2=83.6666666666667 x_0=31500000 y_0=1500000 ellps=WGS84
6118|WGS 84 / EPSG Arctic zone 1-21|proj=lcc lat_0=85.4371183333333 lon_0=-150 lat_1=87 lat_2=83.6666666666667 x_0=21500000 y_0=1500000 ellps=WGS84
6119|WGS 84 / EPSG Arctic zone 2-28|proj=lcc lat_0=82.0584248888889 lon_0=133 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=28500000 y_0=2500000 ellps=WGS84
6120|WGS 84 / EPSG Arctic zone 2-10|proj=lcc lat_0=82.0584248888889 lon_0=166 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=10500000 y_0=2500000 ellps=WGS84
6121|WGS 84 / EPSG Arctic zone 2-12|proj=lcc lat_0=82.0584248888889 lon_0=-154 lat_1=83.6666666666667 lat_2=80.3333333333333 x_0=12500000 y_0=2500000 ellps=WGS84
6122|WGS 84 / EPSG Arctic zone 3-21|proj=lcc lat_0=78.7073375277778 lon_0=176 lat_1=80.3333333333333 lat_2=77 x_0=21500000 y_0=3500000 ellps=WGS84
6123|WGS 84 / EPSG Arctic zone 3-23|proj=lcc lat_0=78.7073375277778 lon_0=-153 lat_1=80.3333333333333 lat_2=77 x_0=23500000 y_0=3500000 ellps=WGS84
6124|WGS 84 / EPSG Arctic zone 4-12|proj=lcc lat_0=75.3644033055556 lon_0=-155 lat_1=77 lat_2=73.6666666666667 x_0=12500000 y_0=4500000 ellps=WGS84
6703|WGS 84 / TM 60 SW|proj=tmerc lat_0=0 lon_0=-60 k=0.9996 x_0=500000 y_0=10000000 ellps=WGS84
6720|WGS 84 / CIG92|proj=tmerc lat_0=0 lon_0=105.625 k=1.000024 x_0=50000 y_0=1300000 ellps=WGS84
6722|WGS 84 / CKIG92|proj=tmerc lat_0=0 lon_0=96.875 k=1 x_0=50000 y_0=1400000 ellps=WGS84
6931|WGS 84 / NSIDC EASE-Grid 2.0 North|proj=laea lat_0=90 lon_0=0 x_0=0 y_0=0 ellps=WGS84
6932|WGS 84 / NSIDC EASE-Grid 2.0 South|proj=laea lat_0=-90 lon_0=0 x_0=0 y_0=0 ellps=WGS84
6933|WGS 84 / NSIDC EASE-Grid 2.0 Global|proj=cea lat_ts=30 lon_0=0 x_0=0 y_0=0 ellps=WGS84
7755|WGS 84 / India NSF LCC|proj=lcc lat_0=24 lon_0=80 lat_1=12.472955 lat_2=35.1728044444444 x_0=4000000 y_0=4000000 ellps=WGS84
7756|WGS 84 / Andhra Pradesh|proj=lcc lat_0=16.25543298 lon_0=80.875 lat_1=13.75 lat_2=18.75 x_0=1000000 y_0=1000000 ellps=WGS84
7757|WGS 84 / Arunachal Pradesh|proj=lcc lat_0=28.00157897 lon_0=94.5 lat_1=27 lat_2=29 x_0=1000000 y_0=1000000 ellps=WGS84
7758|WGS 84 / Assam|proj=lcc lat_0=26.00257703 lon_0=92.75 lat_1=24.6666666666667 lat_2=27.3333333333333 x_0=1000000 y_0=1000000 ellps=WGS84
7759|WGS 84 / Bihar|proj=lcc lat_0=25.87725247 lon_0=85.875 lat_1=24.625 lat_2=27.125 x_0=1000000 y_0=1000000 ellps=WGS84
7760|WGS 84 / Delhi|proj=lcc lat_0=28.62510126 lon_0=77 lat_1=28.375 lat_2=28.875 x_0=1000000 y_0=1000000 ellps=WGS84
7761|WGS 84 / Gujarat|proj=lcc lat_0=22.37807121 lon_0=71.375 lat_1=20.7916666666667 lat_2=23.9583333333333 x_0=1000000 y_0=1000000 ellps=WGS84
7762|WGS 84 / Haryana|proj=lcc lat_0=29.25226266 lon_0=76 lat_1=28.0833333333333 lat_2=30.4166666666667 x_0=1000000 y_0=1000000 ellps=WGS84
7763|WGS 84 / Himachal Pradesh|proj=lcc lat_0=31.75183497 lon_0=77.375 lat_1=30.75 lat_2=32.75 x_0=1000000 y_0=1000000 ellps=WGS84
7764|WGS 84 / Jammu and Kashmir|proj=lcc lat_0=34.75570874 lon_0=76.5 lat_1=33.0833333333333 lat_2=36.4166666666667 x_0=1000000 y_0=1000000 ellps=WGS84
7765|WGS 84 / Jharkhand|proj=lcc lat_0=23.62652682 lon_0=85.625 lat_1=22.5416666666667 lat_2=24.7083333333333 x_0=1000000 y_0=1000000 ellps=WGS84
7766|WGS 84 / Madhya Pradesh|proj=lcc lat_0=24.00529821 lon_0=78.375 lat_1=22 lat_2=26 x_0=1000000 y_0=1000000 ellps=WGS84
7767|WGS 84 / Maharashtra|proj=lcc lat_0=18.88015774 lon_0=76.75 lat_1=16.625 lat_2=21.125 x_0=1000000 y_0=1000000 ellps=WGS84
7768|WGS 84 / Manipur|proj=lcc lat_0=24.75060911 lon_0=94 lat_1=24.0833333333333 lat_2=25.4166666666667 x_0=1000000 y_0=1000000 ellps=WGS84
7769|WGS 84 / Meghalaya|proj=lcc lat_0=25.62524747 lon_0=91.375 lat_1=25.2083333333333 lat_2=26.0416666666667 x_0=1000000 y_0=1000000 ellps=WGS84
7770|WGS 84 / Nagaland|proj=lcc lat_0=26.12581974 lon_0=94.375 lat_1=25.375 lat_2=26.875 x_0=1000000 y_0=1000000 ellps=WGS84
7771|WGS 84 / India Northeast|proj=lcc lat_0=25.63452135 lon_0=93.5 lat_1=23.0416666666667 lat_2=28.2083333333333 x_0=1000000 y_0=1000000 ellps=WGS84
7772|WGS 84 / Orissa|proj=lcc lat_0=20.25305174 lon_0=84.375 lat_1=18.5833333333333 lat_2=21.9166666666667 x_0=1000000 y_0=1000000 ellps=WGS84
7773|WGS 84 / Punjab|proj=lcc lat_0=31.00178226 lon_0=75.375 lat_1=30 lat_2=32 x_0=1000000 y_0=1000000 ellps=WGS84
7774|WGS 84 / Rajasthan|proj=lcc lat_0=26.88505546 lon_0=73.875 lat_1=24.2916666666667 lat_2=29.4583333333333 x_0=1000000 y_0=1000000 ellps=WGS84
7775|WGS 84 / Uttar Pradesh|proj=lcc lat_0=27.13270823 lon_0=80.875 lat_1=24.875 lat_2=29.375 x_0=1000000 y_0=1000000 ellps=WGS84
7776|WGS 84 / Uttaranchal|proj=lcc lat_0=30.0017132 lon_0=79.375 lat_1=29 lat_2=31 x_0=1000000 y_0=1000000 ellps=WGS84
7777|WGS 84 / Andaman and Nicobar|proj=tmerc lat_0=10.25 lon_0=93.25 k=0.9999428 x_0=1000000 y_0=1000000 ellps=WGS84
7778|WGS 84 / Chhattisgarh|proj=tmerc lat_0=21 lon_0=82.25 k=0.9998332 x_0=1000000 y_0=1000000 ellps=WGS84
7779|WGS 84 / Goa|proj=tmerc lat_0=15.375 lon_0=74 k=0.9999913 x_0=1000000 y_0=1000000 ellps=WGS84
7780|WGS 84 / Karnataka|proj=tmerc lat_0=15.125 lon_0=76.375 k=0.9998012 x_0=1000000 y_0=1000000 ellps=WGS84
7781|WGS 84 / Kerala|proj=tmerc lat_0=10.5 lon_0=76 k=0.9999177 x_0=1000000 y_0=1000000 ellps=WGS84
7782|WGS 84 / Lakshadweep|proj=tmerc lat_0=10 lon_0=73.125 k=0.9999536 x_0=1000000 y_0=1000000 ellps=WGS84
7783|WGS 84 / Mizoram|proj=tmerc lat_0=23.125 lon_0=92.75 k=0.9999821 x_0=1000000 y_0=1000000 ellps=WGS84
7784|WGS 84 / Sikkim|proj=tmerc lat_0=27.625 lon_0=88.5 k=0.9999926 x_0=1000000 y_0=1000000 ellps=WGS84
7785|WGS 84 / Tamil Nadu|proj=tmerc lat_0=10.875 lon_0=78.375 k=0.9997942 x_0=1000000 y_0=1000000 ellps=WGS84
7786|WGS 84 / Tripura|proj=tmerc lat_0=23.75 lon_0=91.75 k=0.9999822 x_0=1000000 y_0=1000000 ellps=WGS84
7787|WGS 84 / West Bengal|proj=tmerc lat_0=24.375 lon_0=87.875 k=0.9998584 x_0=1000000 y_0=1000000 ellps=WGS84
8035|WGS 84 / TM Zone 20N (ftUS)|proj=tmerc lat_0=0 lon_0=-63 k=0.9996 x_0=500000.0001016 y_0=0 units=us-ft ellps=WGS84
8036|WGS 84 / TM Zone 21N (ftUS)|proj=tmerc lat_0=0 lon_0=-57 k=0.9996 x_0=500000.0001016 y_0=0 units=us-ft ellps=WGS84
9191|WGS 84 / NIWA Albers|proj=aea lat_0=-40 lon_0=175 lat_1=-30 lat_2=-50 x_0=0 y_0=0 ellps=WGS84
9354|WGS 84 / IBCSO Polar Stereographic|proj=stere lat_0=-90 lat_ts=-65 lon_0=0 x_0=0 y_0=0 ellps=WGS84
9680|WGS 84 / TM 90 NE|proj=tmerc lat_0=0 lon_0=90 k=0.9996 x_0=500000 y_0=0 ellps=WGS84
32661|WGS 84 / UPS North (N,E)|=5041
32664|WGS 84 / BLM 14N (ftUS)|proj=tmerc lat_0=0 lon_0=-99 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft ellps=WGS84
32665|WGS 84 / BLM 15N (ftUS)|proj=tmerc lat_0=0 lon_0=-93 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft ellps=WGS84
32666|WGS 84 / BLM 16N (ftUS)|proj=tmerc lat_0=0 lon_0=-87 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft ellps=WGS84
32667|WGS 84 / BLM 17N (ftUS)|proj=tmerc lat_0=0 lon_0=-81 k=0.9996 x_0=500000.001016002 y_0=0 units=us-ft ellps=WGS84
32761|WGS 84 / UPS South (N,E)|=5042
32766|WGS 84 / TM 36 SE|proj=tmerc lat_0=0 lon_0=36 k=0.9996 x_0=500000 y_0=10000000 ellps=WGS84
`;

/** `@datum|EPSG code of the transformation|its stated accuracy, m|towgs84` opens a group; then as above. */
export const WITH_HELMERT = `
@Ordnance Survey of Great Britain 1936|1314|2|446.448,-125.157,542.06,0.15,0.247,0.842,-20.489
27700|OSGB36 / British National Grid|proj=tmerc lat_0=49 lon_0=-2 k=0.9996012717 x_0=400000 y_0=-100000 ellps=airy
@Amersfoort|4833|1|565.4171,50.3319,465.5524,-0.3989573882,0.3439878174,-1.87740164,4.0725
28992|Amersfoort / RD New|proj=sterea lat_0=52.1561605555556 lon_0=5.38763888888889 k=0.9999079 x_0=155000 y_0=463000 ellps=bessel
@CH1903+|1676|1|674.374,15.056,405.346
2056|CH1903+ / LV95|proj=somerc lat_0=46.9524055555556 lon_0=7.43958333333333 k_0=1 x_0=2600000 y_0=1200000 ellps=bessel
@CH1903|1766|1.5|674.374,15.056,405.346
21781|CH1903 / LV03|proj=somerc lat_0=46.9524055555556 lon_0=7.43958333333333 k_0=1 x_0=600000 y_0=200000 ellps=bessel
@Deutsches Hauptdreiecksnetz|1777|3|598.1,73.7,418.2,0.202,0.045,-2.455,6.7
31466|DHDN / 3-degree Gauss-Kruger zone 2|proj=tmerc lat_0=0 lon_0=6 k=1 x_0=2500000 y_0=0 ellps=bessel
31467|DHDN / 3-degree Gauss-Kruger zone 3|proj=tmerc lat_0=0 lon_0=9 k=1 x_0=3500000 y_0=0 ellps=bessel
31468|DHDN / 3-degree Gauss-Kruger zone 4|proj=tmerc lat_0=0 lon_0=12 k=1 x_0=4500000 y_0=0 ellps=bessel
31469|DHDN / 3-degree Gauss-Kruger zone 5|proj=tmerc lat_0=0 lon_0=15 k=1 x_0=5500000 y_0=0 ellps=bessel
@Militar-Geographische Institut|1618|1.5|577.326,90.129,463.919,5.137,1.474,5.297,2.4232
31254|MGI / Austria GK West|proj=tmerc lat_0=0 lon_0=10.3333333333333 k=1 x_0=0 y_0=-5000000 ellps=bessel
31255|MGI / Austria GK Central|proj=tmerc lat_0=0 lon_0=13.3333333333333 k=1 x_0=0 y_0=-5000000 ellps=bessel
31256|MGI / Austria GK East|proj=tmerc lat_0=0 lon_0=16.3333333333333 k=1 x_0=0 y_0=-5000000 ellps=bessel
31257|MGI / Austria GK M28|proj=tmerc lat_0=0 lon_0=10.3333333333333 k=1 x_0=150000 y_0=-5000000 ellps=bessel
31258|MGI / Austria GK M31|proj=tmerc lat_0=0 lon_0=13.3333333333333 k=1 x_0=450000 y_0=-5000000 ellps=bessel
31259|MGI / Austria GK M34|proj=tmerc lat_0=0 lon_0=16.3333333333333 k=1 x_0=750000 y_0=-5000000 ellps=bessel
31287|MGI / Austria Lambert|proj=lcc lat_0=47.5 lon_0=13.3333333333333 lat_1=49 lat_2=46 x_0=400000 y_0=400000 ellps=bessel
@Reseau National Belge 1972|15929|1|-106.8686,52.2978,-103.7239,0.3366,-0.457,1.8422,-1.2747
31370|BD72 / Belgian Lambert 72|proj=lcc lat_0=90 lon_0=4.36748666666667 lat_1=51.1666672333333 lat_2=49.8333339 x_0=150000.013 y_0=5400088.438 ellps=intl
@System of the Unified Trigonometrical Cadastral Network|1623|1|570.8,85.7,462.8,4.998,1.587,5.261,3.56
5514|S-JTSK / Krovak East North|proj=krovak lat_0=49.5 lon_0=24.8333333333333 alpha=30.2881397527778 k=0.9999 x_0=0 y_0=0 ellps=bessel
@TM65|1641|1|482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15
29902|TM65 / Irish Grid|proj=tmerc lat_0=53.5 lon_0=-8 k=1.000035 x_0=200000 y_0=250000 a=6377340.189 rf=299.3249646
@Geodetic Datum of 1965|1954|1|482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15
29903|TM75 / Irish Grid|proj=tmerc lat_0=53.5 lon_0=-8 k=1.000035 x_0=200000 y_0=250000 a=6377340.189 rf=299.3249646
@Greek Geodetic Reference System 1987|1272|1|-199.87,74.79,246.62
2100|GGRS87 / Greek Grid|proj=tmerc lat_0=0 lon_0=24 k=0.9996 x_0=500000 y_0=0
@Hungarian Datum 1972|1448|1|52.684,-71.194,-13.975,-0.312,-0.1063,-0.3729,1.0191
23700|HD72 / EOV|proj=somerc lat_0=47.1443937222222 lon_0=19.0485717777778 k_0=0.99993 x_0=650000 y_0=200000 ellps=GRS67
`;

/** `datum|codes`: systems on datums that need a shift which is not applied here. */
export const REFUSED = `
AbInvA96_2020 Intermediate Reference Frame|9384,9387
Abidjan 1987|2041,2043,2165,4143
Accra|2136-2137,4168
Aden 1925|6881
Adindan|4201,20135-20138
Afgooye|4205,20538-20539
Agadez|4206
Ain el Abd 1970|2318,4204,20436-20440,20499
Albanian 1987|2199,2462,4191
American Samoa 1962|2155,2194,3102,4169
Amersfoort|4289,28991
Ammassalik 1958|2296,4196
Ancienne Triangulation Francaise (Paris)|4901,27500
Anguilla 1957|2000,4600
Antigua 1943|2001,4601
Aratu|4208,5337,20822-20824
Arc 1950|4209,20934-20936
Arc 1960|4210,21035-21037,21095-21097
Ascension Island 1958|4712
Astro DOS 71|4710,7877-7878
Australian Antarctic Datum 1998|4176
Australian Geodetic Datum 1966|3110,4202,5825,20248-20258
Australian Geodetic Datum 1984|4203,20348-20358
Australian Terrestrial Reference Frame 2014|9309
Autonomous Regions of Portugal 2008|5013-5016,5632-5633
Average Terrestrial System 1977|2200,2219-2220,2290-2291,2294-2295,4122
Ayabelle Lighthouse|4713
Azores Central Islands 1948|2189,4183
Azores Central Islands 1995|3063,4665
Azores Occidental Islands 1939|2188,4182
Azores Oriental Islands 1940|2190,4184
Azores Oriental Islands 1995|3062,4664
Barbados 1938|4212,21291-21292
Batavia|2308,3001,4211,21148-21150
Batavia (Jakarta)|4813,5330,21100
Beduaram|2931,4213
Beijing 1954|2401-2442,4214,21413-21423,21453-21463,21473-21483
Bekaa Valley 1920|6882
Bellevue|4714
Bermuda 1957|3769,4216
Bermuda 2000|3770,4762
Bern 1938|4306
Bhutan National Geodetic Datum|5264,5266,5292-5311
Bioko|6883
Bissau|2095,4165
Bogota 1975|4218,21817-21818,21891-21894,21896-21899
Bogota 1975 (Bogota)|4802
Bukit Rimpah|4219
CH1903|4149,21782
CH1903 (Bern)|4801,21780
CH1903+|4150
CR-SIRGAS|8907-8910
Cadastre 1997|4475,5879
Camacupa 1948|4220,22032-22033,22091-22092
Camacupa 2015|8694
Camp Area Astro|4715
Campo Inchauspe|2315-2316,4221,22191-22197
Cape|4222,22234-22236,22275,22277,22279,22281,22283,22285,22287,22289,22291,22293
Cape Canaveral|4717
Carthage|2088,4223,22332,22391-22392
Carthage (Paris)|4816,22300
Cayman Islands Geodetic Datum 2011|6135,6141,6391
Centre Spatial Guyanais 1967|2971,3312,4623
Chatham Islands Datum 1971|4672,5518
Chatham Islands Datum 1979|4673,5519
Chos Malal 1914|2081,4160
Chua|4071,4224
Cocos Islands 1965|4708
Combani 1950|2980,4474,4632
Conakry 1905|2063-2064,4315,31528-31529
Congo 1960 Pointe Noire|4282,28232
Corrego Alegre 1961|5524,5536-5539
Corrego Alegre 1970-72|4225,22521-22525
Costa Rica 2005|5365,5367
Cote d'Ivoire|4226
Cyprus Geodetic Reference System 1993|6311-6312
Dabola 1981|3461-3462,4155
Datum 73|4274,27429,27492-27493
Datum Geodesi Nasional 1995|4755,23830-23845,23866-23872,23877-23884
Dealul Piscului 1930|4316,31600
Dealul Piscului 1970|4317,31700
Deception Island|4736
Deir ez Zor|4227,22700,22770,22780
Deutsche Bahn Reference System|5681-5685
Deutsches Hauptdreiecksnetz|3068,4314,5520,5676-5680,31461-31465
Diego Garcia 1969|4724
Dominica 1945|2002,4602
Douala|4228,22832
Douala 1948|2214,3119,4192
EBBWV14 Intermediate Reference Frame|9939,9943
ECML14_NB Intermediate Reference Frame|9758,9761
EOS21 Intermediate Reference Frame|9739,9741
EWR2 Intermediate Reference Frame|9763,9766
Easter Island 1967|4719
Egypt 1907|4229,22991-22994
Egypt 1930|4199
Egypt Gulf of Suez S-650 TL|3355,4706
Estonia 1992|3300,4133
European Datum 1950|2192,2206-2212,2319-2325,3066,3893,4230,5627,5643,23028-23038,23090,23095
European Datum 1950(1977)|2058-2061,4154
European Datum 1979|4668
European Datum 1987|4231
European Libyan Datum 1979|2068-2080,2087,4159
European Terrestrial Reference Frame 1989|9059
European Terrestrial Reference Frame 1990|9060
European Terrestrial Reference Frame 1991|9061
European Terrestrial Reference Frame 1992|9062
European Terrestrial Reference Frame 1993|9063
European Terrestrial Reference Frame 1994|9064
European Terrestrial Reference Frame 1996|9065
European Terrestrial Reference Frame 1997|9066
European Terrestrial Reference Frame 2000|9067
European Terrestrial Reference Frame 2005|9068
European Terrestrial Reference Frame 2014|9069
FNL22 Intermediate Reference Frame|9974,9977
Fahud|4232,23239-23240
Faroe Datum 1954|3144,3374,4741
Fatu Iva 72|3303,4688
Fehmarnbelt Datum 2010|5593,5596
Fiji 1956|3141-3142,4721
Fiji Geodetic Datum 1986|3143,3460,4720
Final Datum 1958|3200,4132
Fort Marigot|2969,4621
GBK19 Intermediate Reference Frame|9453,9456
Gambia|6894
Gan 1970|4684
Gandajika|4685
Gandajika 1970|4233
Garoua|2312,4197,4234,23433
Geocentric Datum Brunei Darussalam 2009|5246-5247
Geodetic Datum of 1965|4300
Geodetic Datum of Malaysia 2000|3375-3385,4742
Geodezicheskaya Sistema Koordinat 2011|7683,20904-20932,21004-21032,21207-21264,21307-21364
Grand Cayman Geodetic Datum 1959|3356,4723,6128
Grand Comoros|2999,4646
Greek|4120
Greek (Athens)|4815
Greek Geodetic Reference System 1987|4121
Greenland 1996|3178-3189,4747,6050-6068
Grenada 1953|2003,4603
Guadeloupe 1948|2970,4622
Guam 1963|3295,3993,4675
Gulshan 303|3106,4682,9678
Gunung Segara|2933,3000,4613
Gunung Segara (Jakarta)|2934,4820,5329
Gusterberg (Ferro)|8042,8044
Guyane Francaise|4235
HS2 Intermediate Reference Frame|9299-9300
HULLEE13 Intermediate Reference Frame|9964,9967
Hanoi 1972|2044-2045,2093,4147
Hartebeesthoek94|2046-2055,4148,9221-9222
Helle 1954|3058,4660
Herat North|4255
Hito XVIII 1963|2083-2084,4254
Hjorsey 1955|3053-3056,4658
Hong Kong 1963|3366,3407,4738
Hong Kong 1963(67)|4739
Hong Kong 1980|2326,4611
Hong Kong Geodetic|8427
Hu Tzu Shan 1950|3829,4236
Hungarian Datum 1909|3819
Hungarian Datum 1972|4237
IG05 Intermediate Datum|6983-6984
IG05/12 Intermediate Datum|6990-6991
IGC 1962 Arc of the 6th Parallel South|3318-3327,4697
IGN 1962 Kerguelen|3336,4698
IGN Astro 1960|3367-3369,4700
IGN53 Mare|2995,3172,4641
IGN56 Lifou|2981,4633
IGN63 Hiva Oa|3302,4689
IGN72 Grande Terre|2982,3060,4634,4662
IGN72 Nuku Hiva|2978,4630
IGS00|9006
IGS05|9012
IGS08|9014
IGS14|9019
IGS97|9003
IGb00|9009
IGb08|9017
IGb14|9380
Indian 1954|4239,23946-23948
Indian 1960|3148-3149,3176,4131
Indian 1975|4240,24047-24048
Indonesian Datum 1974|4238,23846-23853,23886-23894
Institut Geographique du Congo Belge 1955|3339-3342,4701
International Terrestrial Reference Frame 1988|8988
International Terrestrial Reference Frame 1989|8989
International Terrestrial Reference Frame 1990|8990
International Terrestrial Reference Frame 1991|8991
International Terrestrial Reference Frame 1992|8992
International Terrestrial Reference Frame 1993|8993
International Terrestrial Reference Frame 1994|8994
International Terrestrial Reference Frame 1996|8995
International Terrestrial Reference Frame 1997|8996
International Terrestrial Reference Frame 2000|8997
International Terrestrial Reference Frame 2005|8998
International Terrestrial Reference Frame 2008|8999
International Terrestrial Reference Frame 2014|9000
International Terrestrial Reference Frame 2020|9990
Iraq-Kuwait Boundary Datum 1992|4667
Iraqi Geospatial Reference System|3889-3892
Israel 1993|2039,4141
Israeli Geodetic Datum 2005|6980,7136
Israeli Geodetic Datum 2005(2012)|6987,7139
Istituto Geografico Militaire 1995|3064-3065,4670,9716
Iwo Jima 1945|4709
Jamaica 1875|4241,24100
Jamaica 1969|4242,24200
Jamaica 2001|3448-3450,4758
Johnston Island 1961|4725
Jouik 1961|4679
K0 1949|2979,4631
Kalianpur 1880|4243,24370-24374,24382
Kalianpur 1937|4144,24305-24306,24375
Kalianpur 1962|4145,24311-24313,24376-24377
Kalianpur 1975|4146,24342-24347,24378-24381,24383
Kandawala|4244,5234
Karbala 1979|3391-3393,4743,6646
Kartastokoordinaattijarjestelma (1966)|2391-2394,3386-3387,4123
Kasai 1953|3316-3317,4696
Katanga 1955|3314-3315,3985-3989,4415,4695
Kertau (RSO)|3167-3168,4751
Kertau 1968|4245,4390-4398,24500,24547-24548,24571
Kingdom of Saudi Arabia Geodetic Reference Frame 2017|9333,9356-9360
Korean Datum 1985|2096-2098,4162,5167-5168,5173-5178
Korean Datum 1995|4166
Kosovo Reference System 2001|9140-9141
Kousseri|2313,4198
Kusaie 1951|4735
Kuwait Oil Company|4246,24600
Kuwait Utility|4319,31900-31901
Kyrgyzstan Geodetic Datum 2006|7686,7692-7696
La Canoa|4247,24718-24720
Lake|2101-2104,4249
Lao 1993|4677
Lao National Datum 1997|4678
Le Pouce 1934|3337,4699
Leigon|4250,25000
Liberia 1964|4251
Libyan Geodetic Datum 2006|3177,3190-3199,3201-3203,4754
Lisbon 1890|4666,5017
Lisbon 1890 (Lisbon)|2963,4904
Lisbon 1937|4207,5018
Lisbon 1937 (Lisbon)|4803,20790-20791
Locodjo 1965|2040,2042,2164,4142
Loma Quintana|4288
Lome|4252,25231
Luxembourg Reference Frame|2169,4181,9895
Luzon 1911|4253,25391-25395
Lyon Turin Ferroviaire 2004|9547
M'poraloko|4266,26632,26692
MGI 1901|3906-3912,6204,6316,8677-8679,8686,9945
MML07 Intermediate Reference Frame|9372-9373
MOLDOR11 Intermediate Reference Frame|9871,9880
MOLDREF99|4023,4026
MOMRA Terrestrial Reference Frame 2000|8818,8836-8840
MOP78|2988,4639
MRH21 Intermediate Reference Frame|9866,9869
MWC18 Intermediate Reference Frame|20002,20033
Macao 1920|8428,8433
Macao Geodetic Datum 2008|8431
Madeira 1936|2191,4185
Madrid 1870 (Madrid)|2062,4903
Madzansua|4128
Mahe 1971|4256
Makassar|3002,4257
Makassar (Jakarta)|4804,5331,25700
Malongo 1987|4259,7992,25932
Manoca|4260
Manoca 1962|2215,4193
Marco Geodesico Nacional de Bolivia|5354-5357
Marcus Island 1952|4711
Marshall Islands 1960|4732
Martinique 1938|2973,4625
Massawa|4262,26237
Maupiti 83|3306,4692
Mauritania 1999|3103-3105,3343-3345,4681,4702
Merchich|4261,26191-26195
Mhast|4264,26432
Mhast (offshore)|3354,4705
Mhast (onshore)|3353,4704
Midway 1961|4727
Militar-Geographische Institut|2170,3787,4312,9271-9273,31265-31268,31275-31279,31284-31286,31294-31297
Militar-Geographische Institut (Ferro)|4805,31251-31253,31281-31283,31288-31293
Ministerio de Marina Norte|9251-9252
Ministerio de Marina Sur|9253-9254
Minna|4263,26331-26332,26391-26393
Missao Hidrografico Angola y Sao Tome 1951|4703
Monte Mario|3003-3004,4265,5659
Monte Mario (Rome)|4806,26591-26592
Montserrat 1958|2004,4604
Moorea 87|3305,4691
Mount Dillon|2066,4157
Moznet (ITRF94)|3036-3037,4130,5629
NAD27 Michigan|4268,26801-26803,26811-26813
NEA74 Noumea|2998,3165-3166,4644
NGO 1948|4273
NGO 1948 (Oslo)|4817,27391-27398
NSWC 9Z-2|4276
Nahrwan 1934|3394,4744,7005-7007
Nahrwan 1967|4270,27037-27040
Nakhl-e Ghanem|3307,4693
Naparima 1955|2067,4158
Naparima 1972|4271,27120
National Geodetic Network|4318,31838-31839
Nepal 1981|6207
New Beijing|4555,4568-4589,4652-4656,4766-4800,4812,4822
New Zealand Geodetic Datum 1949|4272,27200,27205-27232,27258-27260,27291-27292
Nord Sahara 1959|4307,30729-30732,30791-30792
Nord Sahara 1959 (Paris)|4819
Nord de Guerre (Paris)|4902
North American Datum 1927|2085-2086,2204,2964,3069,3080,3309,3370-3371,3771-3774,3795-3797,3800,4267,4399-4413,4418-4419,4455-4456,5069,5458,5588,5623-5625,6200-6202,6966,7991,9311,26701-26722,26729-26760,26766-26787,26791-26799,32001-32003,32005-32031,32033-32058,32061-32062,32064-32067,32074-32077,32081-32086,32098-32099
North American Datum 1927 (1976)|2017-2030,4608
North American Datum 1927 (CGQ77)|2008-2016,2031-2035,2138,4609
North American Datum of 1983 (CSRS96)|8232
North American Datum of 1983 (MARP00)|9072
North American Datum of 1983 (PACP00)|9075
Not specified (based on Airy 1830 ellipsoid)|4001
Not specified (based on Airy Modified 1849 ellipsoid)|4002
Not specified (based on Australian National Spheroid)|4003
Not specified (based on Authalic Sphere)|4035
Not specified (based on Average Terrestrial System 1977 ellipsoid)|4041
Not specified (based on Bessel 1841 ellipsoid)|4004
Not specified (based on Bessel Modified ellipsoid)|4005
Not specified (based on Bessel Namibia ellipsoid)|4006
Not specified (based on Clarke 1858 ellipsoid)|4007
Not specified (based on Clarke 1866 Authalic Sphere)|2163,4052
Not specified (based on Clarke 1866 Michigan ellipsoid)|4009
Not specified (based on Clarke 1866 ellipsoid)|4008
Not specified (based on Clarke 1880 (Arc) ellipsoid)|4013
Not specified (based on Clarke 1880 (Benoit) ellipsoid)|4010
Not specified (based on Clarke 1880 (IGN) ellipsoid)|4011
Not specified (based on Clarke 1880 (RGS) ellipsoid)|4012
Not specified (based on Clarke 1880 (SGA 1922) ellipsoid)|4014
Not specified (based on Clarke 1880 ellipsoid)|4034
Not specified (based on Everest (1830 Definition) ellipsoid)|4042
Not specified (based on Everest 1830 (1937 Adjustment) ellipsoid)|4015
Not specified (based on Everest 1830 (1962 Definition) ellipsoid)|4044
Not specified (based on Everest 1830 (1967 Definition) ellipsoid)|4016
Not specified (based on Everest 1830 (1975 Definition) ellipsoid)|4045
Not specified (based on Everest 1830 Modified ellipsoid)|4018
Not specified (based on GEM 10C ellipsoid)|4031
Not specified (based on GRS 1967 ellipsoid)|4036
Not specified (based on GRS 1980 Authalic Sphere)|3786,4047,4088
Not specified (based on GRS 1980 ellipsoid)|4019
Not specified (based on Helmert 1906 ellipsoid)|4020
Not specified (based on Hughes 1980 ellipsoid)|3411-3412,4054,5890
Not specified (based on Indonesian National Spheroid)|4021
Not specified (based on International 1924 Authalic Sphere)|3408-3410,4053
Not specified (based on International 1924 ellipsoid)|4022
Not specified (based on Krassowsky 1940 ellipsoid)|4024
Not specified (based on NWL 9D ellipsoid)|4025
Not specified (based on OSU86F ellipsoid)|4032
Not specified (based on OSU91A ellipsoid)|4033
Not specified (based on Plessis 1817 ellipsoid)|4027
Not specified (based on Struve 1860 ellipsoid)|4028
Not specified (based on WGS 72 ellipsoid)|4043
Not specified (based on WGS 84 ellipsoid)|4030
Not specified (based on War Office ellipsoid)|4029
Nouakchott 1965|4680
Nouvelle Triangulation Francaise|4275
Nouvelle Triangulation Francaise (Paris)|4807,27561-27564,27571-27574,27581-27584,27591-27594
OS (SN) 1980|4279
OSGB 1970 (SN)|4278
OSNI 1952|4188,29901
Observatario|4129
Ocotepeque 1935|5451,5456-5457,5459-5462,5559
Old Hawaiian|3561-3565,4135
Oman National Geodetic Datum 2014|7373-7376
Oman National Geodetic Datum 2017|9294-9297
Ordnance Survey of Great Britain 1936|4277
PDO Survey Datum 1993|3439-3440,4134
Padang 1884|4280
Padang 1884 (Jakarta)|4808
Palestine 1923|4281,7142,28191-28193
Pampa del Castillo|2082,4161,9284-9285
Panama-Colon 1911|5467,5469,5472
Papua New Guinea Geodetic Datum 1994|5546,5550-5552,9874-9875
Parametry Zemli 1990|4740
Parametry Zemli 1990.02|9474
Parametry Zemli 1990.11|9475
Peru96|5373,5387-5389,5839
Petrels 1972|2985,4636
Philippine Reference System 1992|3121-3125,4683
Phoenix Islands 1966|4716
Pico de las Nieves 1968|9403-9405
Pico de las Nieves 1984|4728,9406-9407
Pitcairn 1967|3784,4729
Pitcairn 2006|3783,4763
Point 58|4620
Pointe Geologie Perroud 1950|2986,4637
Popular Visualisation Datum|3785,4055
Porto Santo 1936|2942,4615
Porto Santo 1995|3061,4663
Posiciones Geodesicas Argentinas|4172
Posiciones Geodesicas Argentinas 1994|4694,22181-22187
Potsdam Datum/83|3396-3397,4746,5666-5667
Principe|4824
Provisional South American Datum 1956|2317,4248,24817-24821,24877-24882,24891-24893
Puerto Rico|3920,3991-3992,4139
Pulkovo 1942|2492-2549,2551-2599,2601-2640,2935-2941,3146-3147,3350-3352,3388-3389,4284,7825-7831,28402-28432,28462-28492
Pulkovo 1942(58)|2171-2175,3120,3328-3335,3833,3837-3840,3844,4179,5631,5663,5670-5672
Pulkovo 1942(83)|2166-2168,2397-2399,3834-3836,3841-3843,4178,4417,4434,5664-5665,5673-5675
Pulkovo 1995|2463-2491,2641-2735,2738-2758,3150-3151,3390,4200,20004-20032,20064-20092
Qatar 1948|2099,4286
Qatar 1974|4285,28600
Qatar National Datum 1995|2932,4614
Qornoq|4287
Qornoq 1927|2216-2217,2297-2307,4194
Rassadiran|2057,4153
Rauenberg Datum/83|3398-3399,4745,5668-5669
Red Geodesica Para Mineria en Chile|9696-9699
Red Geodesica Venezolana|2201-2203,4189
Reference System de Angola 2013|8699,9156-9159
Reseau Geodesique Francais Guyane 1995|2972,3313,4624,7041
Reseau Geodesique Nouvelle Caledonie 1991|2984,4645
Reseau Geodesique de Mayotte 2004|4470-4471,7039
Reseau Geodesique de Nouvelle Caledonie 91-93|3163,3169-3171,4749
Reseau Geodesique de Saint Pierre et Miquelon 2006|4463,4467,7035
Reseau Geodesique de Wallis et Futuna 1996|8900,8902-8903
Reseau Geodesique de la Polynesie Francaise|3296-3299,4687
Reseau Geodesique de la RDC 2005|4046,4048-4051,4056-4063,5844
Reseau Geodesique de la Reunion 1992|2975,4627,5644,7037
Reseau Geodesique des Antilles Francaises 2009|5489-5490,7086
Reseau Geodesique des Terres Australes et Antarctiques Francaises 2007|7073-7082,7088,7133,8455-8456
Reseau National Belge 1950|4215
Reseau National Belge 1950 (Brussels)|4809,21500
Reseau National Belge 1972|4313,31300
Reseau de Reference des Antilles Francaises 1991|2989,4558-4559,4640
Reunion 1947|2990,3727,4626
Reykjavik 1900|3052,4657
Rikets koordinatsystem 1990|2400,3019-3024,4124
Ross Sea Region Geodetic Datum 2000|3852,4764,5479-5482
SCM22 Intermediate Reference Frame|9969,9972
SIRGAS Continuously Operating Network DGF00P01|8972
SIRGAS Continuously Operating Network DGF01P01|8973
SIRGAS Continuously Operating Network DGF01P02|8974
SIRGAS Continuously Operating Network DGF02P01|8975
SIRGAS Continuously Operating Network DGF04P01|8976
SIRGAS Continuously Operating Network DGF05P01|8977
SIRGAS Continuously Operating Network DGF06P01|8978
SIRGAS Continuously Operating Network DGF07P01|8979
SIRGAS Continuously Operating Network DGF08P01|8980
SIRGAS Continuously Operating Network SIR09P01|8981
SIRGAS Continuously Operating Network SIR10P01|8982
SIRGAS Continuously Operating Network SIR11P01|8983
SIRGAS Continuously Operating Network SIR13P01|8984
SIRGAS Continuously Operating Network SIR14P01|8985
SIRGAS Continuously Operating Network SIR15P01|8986
SIRGAS Continuously Operating Network SIR17P01|8987
SIRGAS-Chile|9184
SIRGAS-Chile realization 1 epoch 2002|5360-5362
SIRGAS-Chile realization 2 epoch 2010|8949-8951
SIRGAS-Chile realization 3 epoch 2013|9148-9150
SIRGAS-Chile realization 4 epoch 2016|9153-9155
SIRGAS-Chile realization 5 epoch 2021|20041-20042,20048-20049
SIRGAS-ROU98|5381-5383
SIRGAS_ES2007.8|5393
ST71 Belep|2997,4643
ST84 Ile des Pins|2996,4642
ST87 Ouvea|2983,3164,4635,4750
Saint Pierre et Miquelon 1950|2987,4638
Samboja|2550,4125
Santo 1965|4730
Sao Tome|4823
Sapper Hill 1943|4292,29220-29221
Schwarzeck|4293,29333,29371,29373,29375,29377,29379,29381,29383,29385
Scoresbysund 1952|2218,2221,4195
Segora|4294
Selvagem Grande|2943,4616
Serbian Reference Network 1998|4075
Serbian Spatial Reference System 2000|8682,8685
Serindung|4295
Sibun Gorge 1922|5464,5466,5589
Sierra Leone 1968|2161-2162,4175
Sierra Leone Colony 1924|2159-2160,4174
Sistem Referensi Geospasial Indonesia 2013|9470,9476-9482,9487-9494
Sistema Geodesico Nacional de Panama MACARIO SOLIS|5371
Sister Islands Geodetic Datum 1961|3357,4726,6129
Solomon 1968|4718
South American Datum 1969|4291,4618,5463,5532,29100-29101,29118-29122,29168-29172,29177-29185,29187-29195
South American Datum 1969(96)|5527,5530-5531,5533-5535,5858,5875-5877
South East Island 1943|6892,6915
South Georgia 1968|4722
South Yemen|2091-2092,2395-2396,4164
Sri Lanka Datum 1999|5233,5235
St. George Island|4138
St. Helena Geodetic Datum 2015|7886-7887
St. Helena Tritan|7881-7883
St. Kitts 1955|2005,4605
St. Lawrence Island|4136
St. Lucia 1955|2006,4606
St. Paul Island|4137
St. Stephen (Ferro)|8043,8045
St. Vincent 1945|2007,4607
Stockholm 1938|3025-3030,4308,30800
Stockholm 1938 (Stockholm)|4814
Sudan|4296,29635-29636
Swiss Terrestrial Reference System 1995|4151
System of the Unified Trigonometrical Cadastral Network|4156,5513
System of the Unified Trigonometrical Cadastral Network (Ferro)|2065,4818,5221
System of the Unified Trigonometrical Cadastral Network [JTSK03]|8351-8353
System of the Unified Trigonometrical Cadastral Network/05|5228,5515-5516
System of the Unified Trigonometrical Cadastral Network/05 (Ferro)|5224-5225,5229
TM65|4299,29900
TPEN11 Intermediate Reference Frame|9364,9367
Tahaa 54|2977,4629
Tahiti 52|2976,4628
Tahiti 79|3304,4690
Taiwan Datum 1967|3821,3827-3828
Tananarive 1925|4297,8441,29738-29739
Tananarive 1925 (Paris)|4810,29700-29702
Tapi Aike|9248-9250
Tern Island 1961|4707
Tete|2736-2737,4127
Timbalai 1948|4298,29849-29850,29871-29874
Tokyo|3092-3096,4301,30161-30179
Tokyo 1892|5132,5169-5172
Tonga Geodetic Datum 2005|5886-5887
Trinidad 1903|2314,4302,30200
Tristan 1968|4734
Trucial Coast 1948|4303,30339-30340
Ukraine 2000|5561-5583,6381-6387,9821,9831-9841,9851-9865
Vanua Levu 1915|3139,4748
Vientiane 1982|4676
Vietnam 2000|3405-3406,4756,5896-5899,6956-6959,9205-9218
Viti Levu 1912|3140,4752
Viti Levu 1916|4731
Voirol 1875|4304,30491-30492
Voirol 1875 (Paris)|4811
Voirol 1879|4671,30493-30494
Voirol 1879 (Paris)|4821
WGS 72 Transit Broadcast Ephemeris|2094,3415,4324,32401-32460,32501-32560
Wake Island 1952|4733
World Geodetic System 1966|4760
World Geodetic System 1972|4322,32201-32260,32301-32360
World Geodetic System 1984 (G1150)|9055
World Geodetic System 1984 (G1674)|9056
World Geodetic System 1984 (G1762)|9057
World Geodetic System 1984 (G2139)|9755
World Geodetic System 1984 (G730)|9053
World Geodetic System 1984 (G873)|9054
World Geodetic System 1984 (Transit)|8888
Xian 1980|2327-2390,4610
Yacare|4309
Yemen National Geodetic Network 1996|2089-2090,4163,5836-5837
Yoff|4310,31028
Zanderij|4311,31121,31154,31170-31171
fk89|3173,4753
`;
