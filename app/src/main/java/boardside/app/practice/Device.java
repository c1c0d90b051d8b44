package boardside.app.practice;

/**
 * A phone or other machine that was let in by a pairing code.
 *
 * @param id of the device
 * @param name what its owner called it
 * @param pairedAt when it was let in, ISO-8601
 * @param seenAt when it last asked for something, to about an hour, ISO-8601
 */
public record Device(String id, String name, String pairedAt, String seenAt) {}
