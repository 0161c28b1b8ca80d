export { type BuiltFile, listBuiltFiles, nameInUrl } from './built-files.ts';
export { firstPage } from './first-page.ts';
export { contentSecurityPolicy, securityHeaders } from './security-headers.ts';
