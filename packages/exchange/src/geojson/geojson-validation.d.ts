/** geojson-validation brings no types. With `trace` each check answers with its list of problems. */
declare module 'geojson-validation' {
  const gate: {
    isFeature(value: unknown, trace: true): string[] | undefined;
    isGeometryObject(value: unknown, trace: true): string[] | undefined;
  };
  export default gate;
}
