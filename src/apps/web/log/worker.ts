import { expose } from "comlink";
import { Tablet } from "./tablet.ts";

expose(new Tablet());
