/**
 * The scenarios that are shipped, parsed. For server, command line and tests: the browser gets the one
 * scenario that it draws from, already parsed, and loads neither this file nor the schema.
 */
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import antennaSwap from './scenarios/antenna-swap.json' with { type: 'json' };
import bridgeBearing from './scenarios/bridge-bearing.json' with { type: 'json' };
import deckStripping from './scenarios/deck-stripping.json' with { type: 'json' };
import dockSign from './scenarios/dock-sign.json' with { type: 'json' };
import flatRoofEdge from './scenarios/flat-roof-edge.json' with { type: 'json' };
import formworkDeck from './scenarios/formwork-deck.json' with { type: 'json' };
import girderFrost from './scenarios/girder-frost.json' with { type: 'json' };
import gutterRepair from './scenarios/gutter-repair.json' with { type: 'json' };
import liftShaft from './scenarios/lift-shaft.json' with { type: 'json' };
import lightingBridge from './scenarios/lighting-bridge.json' with { type: 'json' };
import loadingDock from './scenarios/loading-dock.json' with { type: 'json' };
import shaftLanding from './scenarios/shaft-landing.json' with { type: 'json' };
import siloTop from './scenarios/silo-top.json' with { type: 'json' };
import siloTwoWorkers from './scenarios/silo-two-workers.json' with { type: 'json' };
import siloWeld from './scenarios/silo-weld.json' with { type: 'json' };
import stageGrid from './scenarios/stage-grid.json' with { type: 'json' };
import stagePulley from './scenarios/stage-pulley.json' with { type: 'json' };
import tankLanding from './scenarios/tank-landing.json' with { type: 'json' };
import tankRoof from './scenarios/tank-roof.json' with { type: 'json' };
import telecomMast from './scenarios/telecom-mast.json' with { type: 'json' };
import turbineNacelle from './scenarios/turbine-nacelle.json' with { type: 'json' };
import viaductLamp from './scenarios/viaduct-lamp.json' with { type: 'json' };
import yardMast from './scenarios/yard-mast.json' with { type: 'json' };
import type { ShippedId } from './index.ts';

/** In the order in which they are offered: easy ones first. */
const DOCUMENTS = {
	'bridge-bearing': bridgeBearing,
	'stage-grid': stageGrid,
	'yard-mast': yardMast,
	'girder-frost': girderFrost,
	'tank-landing': tankLanding,
	'dock-sign': dockSign,
	'viaduct-lamp': viaductLamp,
	'lighting-bridge': lightingBridge,
	'shaft-landing': shaftLanding,
	'flat-roof-edge': flatRoofEdge,
	'turbine-nacelle': turbineNacelle,
	'formwork-deck': formworkDeck,
	'loading-dock': loadingDock,
	'antenna-swap': antennaSwap,
	'silo-two-workers': siloTwoWorkers,
	'gutter-repair': gutterRepair,
	'silo-weld': siloWeld,
	'stage-pulley': stagePulley,
	'silo-top': siloTop,
	'telecom-mast': telecomMast,
	'tank-roof': tankRoof,
	'lift-shaft': liftShaft,
	'deck-stripping': deckStripping
} satisfies Record<ShippedId, unknown>;

let parsed: ReadonlyMap<string, Scenario> | undefined;

function all(): ReadonlyMap<string, Scenario> {
	parsed ??= new Map(Object.entries(DOCUMENTS).map(([id, document]) => [id, scenarioSchema.parse(document)]));
	return parsed;
}

/** @returns every shipped scenario, parsed once. @throws ZodError if a shipped document breaks its schema. */
export function shippedScenarios(): readonly Scenario[] {
	return [...all().values()];
}

/** @returns the shipped scenario of an id, or undefined. */
export function shippedScenario(id: string): Scenario | undefined {
	return all().get(id);
}

/** @returns the document of a shipped scenario as it was written, or undefined: what copies are made from. */
export function shippedDocument(id: string): Readonly<Record<string, unknown>> | undefined {
	return Object.hasOwn(DOCUMENTS, id) ? DOCUMENTS[id as ShippedId] : undefined;
}
