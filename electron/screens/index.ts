export { type BuiltFile, listBuiltFiles, nameInUrl } from './built-files.ts';
export { contentSecurityPolicy, securityHeaders } from './security-headers.ts';
