/** What can be done with produce, in the order the pages list them. */
export const WAYS = ["eat", "cook", "freeze", "bottle", "dry", "pickle", "ferment", "store", "give"] as const;
export type Way = (typeof WAYS)[number];

export const STAGES = ["emerged", "planted-out", "flowering", "fruit-set", "first-pick", "finished"] as const;
export type Stage = (typeof STAGES)[number];

export const COVERS = ["open", "fleece", "cold-frame", "polytunnel", "greenhouse", "indoors"] as const;
export type Cover = (typeof COVERS)[number];

export const METHODS = ["direct", "transplant", "established"] as const;

export const PLACE_KINDS = ["fridge", "freezer", "shelf", "cellar", "clamp"] as const;
export type PlaceKind = (typeof PLACE_KINDS)[number];
