/** Called now and then by long work; throws where the work is to stop. */
export interface Checkpoint {
  checkpoint(): void;
}

export const NO_CHECKPOINT: Checkpoint = { checkpoint() {} };
