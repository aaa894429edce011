/** Stands between a device and its server and breaks connections off, at moments that a seed decides: a bad network. */

import type { AddressInfo } from 'node:net';
import { connect, createServer, type Socket } from 'node:net';

export interface CuttingProxy {
  readonly url: string;
  /** How often it has cut so far. */
  cuts(): number;
  /** From now on it lets everything through. */
  heal(): void;
  stop(): Promise<void>;
}

/**
 * Cuts `most` times. Each connection carries some bytes first, in one of the two directions: a request that never
 * arrives whole, or an answer that is lost although the server has done what was asked.
 * @param chance from 0 to 1, seeded.
 */
export async function startCuttingProxy(toPort: number, chance: () => number, most: number): Promise<CuttingProxy> {
  let cuts = 0;
  let isHealed = false;
  const open = new Set<Socket>();
  const server = createServer((device) => {
    const there = connect(toPort, '127.0.0.1');
    const both = [device, there] as const;
    const end = () => {
      for (const each of both) each.destroy();
    };
    for (const each of both) {
      open.add(each);
      each.on('close', () => open.delete(each)).on('error', end);
    }
    const direction = chance() < 0.5 ? 'up' : 'down';
    // From less than one small request to half a large one, or several answers.
    let bytesLeft = Math.floor(300 + 40_000 * chance());
    const pass = (from: Socket, to: Socket, isCounted: boolean) =>
      from.on('data', (piece) => {
        if (isCounted) bytesLeft -= piece.length;
        if (bytesLeft < 0 && cuts < most && !isHealed) {
          cuts += 1;
          end();
        } else to.write(piece);
      });
    pass(device, there, direction === 'up').on('end', () => there.end());
    pass(there, device, direction === 'down').on('end', () => device.end());
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    cuts: () => cuts,
    heal: () => {
      isHealed = true;
    },
    stop: async () => {
      for (const each of open) each.destroy();
      await new Promise((closed) => server.close(closed));
    },
  };
}
