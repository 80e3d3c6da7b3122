import { certificatePdf } from '../../../../../handing-out/certificate-pdf.ts';
import { employerOf } from '../../../../asking.ts';
import type { RequestHandler } from './$types';

/** The certificate of a record, as PDF. */
export const GET: RequestHandler = ({ locals, params, url }) => certificatePdf(employerOf(locals.who), params, url, locals.language);
