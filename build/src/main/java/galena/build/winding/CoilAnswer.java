package galena.build.winding;

/** A coil, or why there is none. */
public sealed interface CoilAnswer permits Coil, CoilAnswer.None {
    /**
     * @param reason in words that follow "No coil: "
     * @param remedy what would help
     */
    record None(String reason, String remedy) implements CoilAnswer {}
}
