import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

/** The app and nothing else: its own scripts, its own worker, WebAssembly for barcodes and PINs. */
export const CONTENT_POLICY = {
  defaultSrc: ["'none'"],
  scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
  styleSrc: ["'self'"],
  // Photographs travel inside facts as data URLs; the camera's picture is a blob.
  imgSrc: ["'self'", 'data:', 'blob:'],
  mediaSrc: ["'self'", 'blob:'],
  fontSrc: ["'self'"],
  connectSrc: ["'self'"],
  workerSrc: ["'self'"],
  manifestSrc: ["'self'"],
  formAction: ["'self'"],
  baseUri: ["'none'"],
  objectSrc: ["'none'"],
  frameAncestors: ["'none'"],
};

/** A year (RFC 6797). Only ever sent under TLS, where a browser heeds it. */
const ONE_YEAR = 31_536_000;

/** Nothing the app does not need: the camera reads barcodes, all else is off. */
const PERMISSIONS = [
  'camera=(self)',
  ...['microphone', 'geolocation', 'payment', 'usb', 'serial', 'midi', 'display-capture'].map(
    (feature) => `${feature}=()`,
  ),
  'screen-wake-lock=(self)',
].join(', ');

export async function addSecurityHeaders(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_POLICY },
    referrerPolicy: { policy: 'no-referrer' },
    frameguard: { action: 'deny' },
    // Sent below, and only where it means something.
    strictTransportSecurity: false,
  });
  app.addHook('onRequest', async (request, reply) => {
    reply.header('permissions-policy', PERMISSIONS);
    if (request.protocol === 'https')
      reply.header('strict-transport-security', `max-age=${ONE_YEAR}`);
  });
}
