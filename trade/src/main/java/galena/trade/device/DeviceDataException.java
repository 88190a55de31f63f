package galena.trade.device;

import java.util.List;

/** Device figures that can't be used: every problem found, each with its place, cause and remedy. */
public final class DeviceDataException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final transient List<String> problems;

    public DeviceDataException(List<String> problems) {
        super(String.join("\n", problems));
        this.problems = List.copyOf(problems);
    }

    /** One line per problem. */
    public List<String> problems() {
        return problems;
    }
}
