export const folderPolicy: string;
export function singlePolicy(within: { script: string; style: string }): string;
