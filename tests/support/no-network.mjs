// Loaded with --import before a program of ours: any attempt to reach another machine, or to ask for a name,
// is written down and ends it with code 97.
import dgram from 'node:dgram';
import dns from 'node:dns';
import net from 'node:net';

/** @param {string} what */
function refuse(what) {
  process.stderr.write(`OUTGOING ${what}\n`);
  process.exit(97);
}

const connect = net.Socket.prototype.connect;
net.Socket.prototype.connect = /** @type {typeof connect} */ (
  function (/** @type {any[]} */ ...args) {
    // Node's own callers pass what they have normalised already: one list of options and callback.
    const [options] = Array.isArray(args[0]) ? args[0] : args;
    // A path alone is a pipe on this machine.
    if (!options?.path || options.port)
      refuse(`connection to ${options?.host ?? args[1]}:${options?.port ?? options}`);
    // @ts-expect-error: the socket that it is called on
    return Reflect.apply(connect, this, args);
  }
);
Object.assign(dns, { lookup: () => refuse('name lookup') });
Object.assign(dgram, { createSocket: () => refuse('datagram') });
