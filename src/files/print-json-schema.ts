/** Prints the JSON Schema, for the script that writes it. */
import { designJsonSchema } from "./json-schema.js";

console.log(JSON.stringify(designJsonSchema(), undefined, 2));
