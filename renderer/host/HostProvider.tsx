import { createContext, type ReactNode, useContext } from 'react';
import type { HostClient } from '../../core/contract/index.ts';

const HostContext = createContext<HostClient | null>(null);

export function HostProvider({ client, children }: { client: HostClient; children: ReactNode }) {
  return <HostContext value={client}>{children}</HostContext>;
}

export function useHost(): HostClient {
  const client = useContext(HostContext);
  if (!client) throw new Error('useHost outside HostProvider');
  return client;
}
