// Loaded before the program: whatever would reach for the network throws.
const dns = require('node:dns')
const dgram = require('node:dgram')
const http = require('node:http')
const http2 = require('node:http2')
const https = require('node:https')
const net = require('node:net')
const tls = require('node:tls')

const refuse = (name) => () => {
  require('node:fs').writeSync(2, `NETWORK USED: ${name}\n`)
  process.kill(process.pid, 'SIGKILL')
}
net.Socket.prototype.connect = refuse('net connect')
net.Server.prototype.listen = refuse('net listen')
for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6']) dns[name] = dns.promises[name] = refuse(`dns.${name}`)
for (const name of ['request', 'get']) http[name] = https[name] = refuse(`http.${name}`)
for (const [module, name] of [
  [http2, 'connect'],
  [tls, 'connect'],
  [dgram, 'createSocket'],
])
  module[name] = refuse(name)
globalThis.fetch = refuse('fetch')
globalThis.WebSocket = refuse('WebSocket')
