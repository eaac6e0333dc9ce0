import { wardBag } from "./bag-view.ts";
import { nearPeople } from "./near-people.ts";
import { wardPutIn } from "./put-in-view.ts";
import { wardBands, wardShelf } from "./shelf-view.ts";

export const wardViews = { wardShelf, wardBands, wardBag, wardPutIn, wardPeople: nearPeople } as const;
