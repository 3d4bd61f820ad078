export const helped = 1;
