import type { Family } from "./family.ts";
import { hoist } from "./hoist.ts";
import { projects } from "./project.ts";
import { rotation } from "./rotation.ts";
import { shop } from "./shop.ts";

/** Every kind of file that `npm run bench -- plan FILE` reads; the first that knows a file solves it. */
export const families: readonly Family[] = [shop, rotation, hoist, ...projects];
