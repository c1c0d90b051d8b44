package boardside.app.practice;

import java.time.Instant;

/**
 * A browser in which an account is signed in.
 *
 * @param id of the login
 * @param account that is signed in
 * @param device what kind of browser it said it was
 * @param madeAt when it signed in
 * @param seenAt when it last asked for something, to about an hour
 */
public record Login(String id, String account, String device, Instant madeAt, Instant seenAt) {}
