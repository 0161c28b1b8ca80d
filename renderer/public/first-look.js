// Before the first paint, where the host sent a picture of the first screen along: what only the browser knows.
const page = document.documentElement;
if (page.dataset.theme === 'system')
  page.dataset.theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day';
// The picture is the bench's; an address that names another screen goes without.
if (!['', '#bench'].includes(location.hash)) page.dataset.picture = 'none';
