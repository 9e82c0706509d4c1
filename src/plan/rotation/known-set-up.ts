/** What is known of the set-up of a task: nothing yet; made directly before it; it stands from an earlier task. */
export const OPEN = 0;
export const MADE = 1;
export const STANDS = 2;
