/** Licences of what others wrote and the app contains. */
export const licences = {
  title: 'Licences',
  lead: 'The app contains work of others. Open a name to read under which terms.',
  source: (address: string) => `Source: ${address}`,
  textOf: (name: string) => `Licence of ${name}`,
  publicDomain: 'In the public domain: its authors have given up all rights.',
  unreachable:
    'The list could not be loaded. Connect to where the app came from and open it again.',
};
