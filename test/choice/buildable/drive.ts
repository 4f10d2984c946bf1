export { pluckedDrive as driveOf } from "../../../src/server/jobs/sound/plucked-drive.ts";
