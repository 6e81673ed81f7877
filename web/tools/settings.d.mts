export const WEB: string;
export const ENGINE_FOLDER: string;
export const PAGE_OUT: string;
export const SINGLE_OUT: string;
