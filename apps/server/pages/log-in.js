/** Trades the token for a session; the token itself is not kept. */
const form = document.getElementById('log-in');
const answer = document.getElementById('answer');

form.addEventListener('submit', async (event) => {
  event.preventDefault();
  const body = JSON.stringify({ token: document.getElementById('token').value.trim() });
  answer.textContent = '';
  try {
    const response = await fetch('/api/session', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
    });
    if (response.ok) location.assign('/');
    else answer.textContent = (await response.json()).description;
  } catch {
    answer.textContent = 'The server did not answer. Try again.';
  }
});
