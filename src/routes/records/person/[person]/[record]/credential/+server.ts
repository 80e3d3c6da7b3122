import { credentialFile } from '../../../../../handing-out/credential-file.ts';
import { employerOf } from '../../../../asking.ts';
import type { RequestHandler } from './$types';

/** The open credential of a record, as a signed token. */
export const GET: RequestHandler = ({ locals, params, url }) => credentialFile(employerOf(locals.who), params, url);
