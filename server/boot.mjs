/** A worker thread starts as plain JavaScript: this teaches it to read TypeScript, then begins with the file it is given. */
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
await import(workerData.entry);
