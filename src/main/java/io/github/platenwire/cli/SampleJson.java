package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.commission.ChannelRange;
import io.github.platenwire.commission.Sample;
import io.github.platenwire.commission.SampleReport;
import io.github.platenwire.commission.Undecoded;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.reading.EscapedBytes;

/** What a definition makes of a sample, for a program to read. Stateless. */
final class SampleJson {
  private SampleJson() {}

  static String text(DeviceDefinition definition, Sample sample, SampleReport report) {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("definition", definition.name()).put("sample", sample.source());
    put(node, report);
    for (Undecoded stretch : report.undecoded()) {
      node.withArray("undecoded")
          .addObject()
          .put("offset", stretch.offset())
          .put("bytes", EscapedBytes.encode(stretch.bytes()))
          .put("fault_offset", stretch.faultOffset())
          .put("why", stretch.fault().why());
    }
    return node.toPrettyString();
  }

  /** The counts and the channels. */
  static void put(ObjectNode node, SampleReport report) {
    node.put("bytes", report.bytes())
        .put("explained_bytes", report.explainedBytes())
        .put("share", report.share())
        .put("frames", report.frames())
        .put("undecoded_frames", report.undecodedFrames())
        .put("torn_head_bytes", report.tornHeadBytes())
        .put("unfinished_bytes", report.unfinishedBytes());
    for (ChannelRange channel : report.channels()) {
      ObjectNode one = node.withArray("channels").addObject();
      one.put("name", channel.name()).put("unit", channel.unit().symbol());
      one.put("readings", channel.readings());
      if (!Double.isNaN(channel.least())) {
        one.put("least", channel.least()).put("greatest", channel.greatest());
      }
      ObjectNode qualities = one.putObject("qualities");
      channel.qualities().forEach((quality, count) -> qualities.put(quality.word(), count));
    }
    node.withArray("undecoded");
    report.readings().forEach(node.withArray("readings")::add);
  }
}
