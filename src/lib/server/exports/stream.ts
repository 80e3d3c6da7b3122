/** Text on its way to somebody who takes it at their own pace. */
import { setImmediate } from 'node:timers/promises';

/**
 * A body of an answer, UTF-8. The next part is made when the one before was taken. Who goes away ends the work; a fault
 * breaks the connection, so that nobody takes half a file for a whole one.
 * @param failed is told the fault
 */
export function bodyOf(parts: AsyncGenerator<string, void, undefined>, failed: (error: unknown) => void): ReadableStream<Uint8Array> {
	const encoder = new TextEncoder();
	return new ReadableStream<Uint8Array>(
		{
			async pull(controller) {
				try {
					// SQLite answers at once: between two pages others have their turn.
					await setImmediate();
					const { done, value } = await parts.next();
					if (done === true) controller.close();
					else controller.enqueue(encoder.encode(value));
				} catch (error) {
					failed(error);
					controller.error(error);
				}
			},
			async cancel() {
				await parts.return();
			}
		},
		{ highWaterMark: 0 }
	);
}
