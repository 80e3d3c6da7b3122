/**
 * The geometry of the site drawing without its components, for what draws it elsewhere: on paper. A face of its own,
 * because index.ts brings the Svelte components along.
 */
export { drawBackdrop } from './backdrop/draw.ts';
export { breakLines, earthStrokes } from './drawing/ground.ts';
export { isMaterial, MATERIAL_DOT, MATERIAL_LINE, MATERIALS, type Material, type MaterialTile } from './drawing/materials.ts';
export type { Fill, Line, Shape, Weight } from './drawing/shapes.ts';
export { polyline, px, toPoint, toX, toY, type Point, type View } from './drawing/view.ts';
export type { FigurePaths } from './figure/paths.ts';
export { LAY_DASH, lanyardPaths, type LanyardPaths, type Ring, type Stroke } from './lanyard/paths.ts';
export { layoutElevation, unplacedDimensions, type Elevation } from './layout/elevation.ts';
export type { PlacedDimension } from './layout/dimension.ts';
export type { PlacedText } from './layout/placer.ts';
export type { SiteModel } from './model.ts';
