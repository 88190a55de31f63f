package galena.bench.capture;

/**
 * A capture as read.
 *
 * @param name of the file
 * @param content samples or readings
 * @param understanding how the file was read
 */
public record Capture(String name, Content content, Understanding understanding) {}
