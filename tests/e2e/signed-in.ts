/** Browsers of people who are signed in. */
import type { BrowserContext } from '@playwright/test';

/** Gives a browser somebody's session. @param cookie as the server set it: `session=…` */
export async function signIn(context: BrowserContext, cookie: string, address: string): Promise<void> {
	const [name = '', value = ''] = cookie.split('=');
	await context.addCookies([{ name, value, url: address }]);
}
