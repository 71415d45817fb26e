export * from "./beds.ts";
export * from "./cook-days.ts";
export * from "./households.ts";
export * from "./recipes.ts";
export * from "./reference.ts";
export * from "./sowings.ts";
export * from "./stamps.ts";
