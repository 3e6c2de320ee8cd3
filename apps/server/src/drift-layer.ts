export const driftLayer=(_:unknown)=>({type:'FeatureCollection',features:[] as unknown[]});
