/** What writes the formats that are asked for, loaded together: one large file is sooner read than many. */
export { dxfFiles } from './dxf-files';
export { fabricFiles } from './fabric-files';
export { printFiles } from './print-files';
export { specFiles } from './spec-files';
