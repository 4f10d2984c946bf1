export { pluckedDrive as driveOf } from "../../../src/server/jobs/plucked-drive.ts";
