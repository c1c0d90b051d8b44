// How operations reach the server from a page of ours.

/** A sender for an Outbox; `token` goes with every request, `notLetIn` is said when this device has been shut out. */
export function sender(token, notLetIn) {
  const post = (player, operations) => fetch("/api/outbox", {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Boardside-Token": token },
    body: JSON.stringify({ player, operations, sentAt: Date.now() }),
  });
  return async (player, operations) => {
    let response = await post(player, operations);
    if (response.status === 403) {
      // The cookie this page's token belongs to is gone; ask for a new pair.
      token = (await (await fetch("/api/token")).json()).token;
      response = await post(player, operations);
    }
    if (!response.ok) {
      const failure = new Error(`status ${response.status}`);
      failure.said = response.status === 401 ? notLetIn : "";
      failure.stranger = response.status === 404;
      throw failure;
    }
    return (await response.json()).results;
  };
}
