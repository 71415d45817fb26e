/** One seed for all properties, so that a red run can be repeated; another by STILLROOM_TEST_SEED, to look further. */
import fc from "fast-check";

fc.configureGlobal({ seed: Number(process.env["STILLROOM_TEST_SEED"] ?? 20_270_726) });
