/** The parts used here of the npm package psychrolib, which has no types of its own. Pressures in Pa, humidity 0 to 1. */
declare module "psychrolib" {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetVapPresFromRelHum(celsius: number, humidity: number): number;
    GetTDewPointFromRelHum(celsius: number, humidity: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
