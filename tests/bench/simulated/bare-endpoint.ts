/**
 * What an answer endpoint costs at least: a plain HTTP server that makes one durable insert for each POST.
 * Run as a process of its own: `node bare-endpoint.ts FILE`; prints its address.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { DatabaseSync } from 'node:sqlite';

const file = process.argv[2];
if (file === undefined) throw new Error('name the file of the database');
const database = new DatabaseSync(file);
database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE sent (number INTEGER PRIMARY KEY, body TEXT NOT NULL)');
const insert = database.prepare('INSERT INTO sent (body) VALUES (?)');

const server = createServer((request, response) => {
	const parts: Buffer[] = [];
	request.on('data', (part: Buffer) => parts.push(part));
	request.on('end', () => {
		const { lastInsertRowid } = insert.run(Buffer.concat(parts).toString('utf8'));
		const body = JSON.stringify({ stored: Number(lastInsertRowid) });
		response.writeHead(201, { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) });
		response.end(body);
	});
});
server.listen(0, '127.0.0.1', () => {
	const { port } = server.address() as AddressInfo;
	console.log(`Bare endpoint is at http://127.0.0.1:${port}`);
});
process.once('SIGTERM', () => {
	server.closeAllConnections();
	server.close(() => {
		database.close();
		process.exit(0);
	});
});
