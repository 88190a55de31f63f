/** Pictures in time of a test point as charts: pure functions from {@link galena.build.picture.TimePictures} to {@link galena.packet.chart.Chart}s. */
@NullMarked
package galena.packet.picture;

import org.jspecify.annotations.NullMarked;
