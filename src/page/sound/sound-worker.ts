import { expose } from "comlink";
import { SoundDesk } from "./sound-desk.ts";

expose(new SoundDesk());
