package galena.bench.capture;

/**
 * One channel over the whole file, and the longest unbroken stretch of it that was kept.
 *
 * @param name as the file has it, or by number
 * @param unit {@code V}, {@code A}, … or {@code code} when the file does not say
 * @param samples the kept stretch; not to be changed
 * @param statistics over the whole file
 */
@SuppressWarnings("ArrayRecordComponent") // millions of samples: a list would cost four times the memory
public record Channel(String name, String unit, double[] samples, ChannelStatistics statistics) {}
