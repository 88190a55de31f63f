package galena.trade.device;

import java.util.List;
import java.util.Set;

/**
 * The printed figures don't suffice.
 *
 * @param type the device
 * @param reason what can't be told and why, with a remedy
 * @param wanted quantities any of which, printed or measured, would help
 */
public record NotDerivable<M>(String type, String reason, Set<DeviceQuantity> wanted) implements ModelAnswer<M> {
    public NotDerivable {
        wanted = Set.copyOf(wanted);
    }

    @Override
    public M orElseThrow() {
        throw new DeviceDataException(List.of(type + ": " + reason));
    }
}
