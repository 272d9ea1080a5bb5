/** mm that the first page needs inside its margins: both test squares and what stands beside them. */
export const FRONT_ROOM = { width: 165, height: 238 } as const;
