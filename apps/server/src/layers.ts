import type { Assessment } from '@crownfall/assessment';
import type { LonLatGeometry } from '@crownfall/geometry';
const ring=(r:Float64Array)=>{const o:number[][]=[];for(let i=0;i<r.length;i+=2)o.push([r[i],r[i+1]]);if(o.length)o.push(o[0]);return o;};
const geo=(g:LonLatGeometry)=>g.kind==='area'?{type:'MultiPolygon',coordinates:g.polygons.map(p=>p.map(ring))}:null;
const fc=(features:unknown[])=>({type:'FeatureCollection',features});
export const blockLayer=(a:Assessment)=>fc(a.blocks.map(b=>({type:'Feature',geometry:geo(b.geometry),properties:{block_id:b.blockId,rank:b.rank,name:b.name}})));
export const pavementLayer=(a:Assessment)=>fc(a.pavement.map(b=>({type:'Feature',geometry:geo(b.geometry),properties:{pavement_id:b.pavementId,kind:b.kind,stained_pct:100*b.stainedM2.value/b.pavementM2}})));
export const treeLayer=(a:Assessment)=>fc(a.trees.map(b=>({type:'Feature',geometry:geo(b.geometry),properties:{tree_id:b.treeId,host:b.host,dose:b.dose,severity_pct:b.severityPct,severity_from:b.severityFrom,cause:b.cause,crown_m2:b.crownM2,stained_m2:b.stainedM2.value}})));
