import { rmSync } from 'node:fs';

/** Removes the database that the browser tests have filled. */
export default function teardown(): void {
	const data = process.env.E2E_DATA;
	if (data !== undefined) rmSync(data, { recursive: true, force: true });
}
