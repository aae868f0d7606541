import Fastify, { type FastifyInstance } from 'fastify';
import { addSecurityHeaders } from '../http/security-headers.ts';
import { GUIDE_CSS, type Guide, guidePage } from './guide-page.ts';
import { qrSvg } from './qr.ts';
import { fingerprint, x509 } from './x509.ts';

export interface GuideSetting extends Omit<Guide, 'fingerprint'> {
  /** The authority's certificate, PEM. */
  readonly authority: string;
  readonly guideUrl: string;
}

/**
 * Plain HTTP, because a tablet that does not trust the server yet could open nothing else. It holds
 * no secret and takes nothing in; whoever could forge it is found out by comparing the number.
 */
export async function buildGuide(setting: () => GuideSetting): Promise<FastifyInstance> {
  const app = Fastify({ forceCloseConnections: true });
  await addSecurityHeaders(app);
  app.addHook('onSend', (_request, reply, _payload, done) => {
    reply.header('cache-control', 'no-store');
    done();
  });
  app.get('/', (_request, reply) => {
    const now = setting();
    const page = guidePage({ ...now, fingerprint: fingerprint(now.authority) });
    return reply.type('text/html; charset=utf-8').send(page);
  });
  app.get('/guide.css', (_request, reply) => reply.type('text/css').send(GUIDE_CSS));
  app.get('/guide.svg', (_request, reply) =>
    reply.type('image/svg+xml').send(qrSvg(setting().guideUrl)),
  );
  app.get('/tallyround.crt', (_request, reply) =>
    reply
      .type('application/x-x509-ca-cert')
      .header('content-disposition', 'attachment; filename="tallyround.crt"')
      .send(Buffer.from(new x509.X509Certificate(setting().authority).rawData)),
  );
  app.get('/favicon.ico', (_request, reply) => reply.code(204).send());
  return app;
}
