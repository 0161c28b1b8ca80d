export const planSheets = {
  titles: {
    fluid: 'Fluid and injection',
    ladder: 'Ladder',
    mixture: 'Mixture',
    heat: 'Heat',
    tables: 'Tables',
  },
  cantYetWhy: 'It needs a few numbers of the setup. These are missing or can’t be:',
};
