export * from './handover-document.ts';
export * from './make-document.ts';
