package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.study.StudyStatus;

/** A study's status as JSON; times in UTC. Stateless. */
final class StudyStatusJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private StudyStatusJson() {}

  static String text(StudyStatus status) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("title", status.title());
    root.put("now", status.now().toString());
    root.put("zone", status.zone().getId());
    root.put("overdue", status.overdue());
    due(root.putArray("due"), status);
    ArrayNode progress = root.putArray("progress");
    for (StudyStatus.Progress one : status.progress()) {
      progress
          .addObject()
          .put("series", one.series())
          .put("label", one.label())
          .put("age_days", one.ageDays())
          .put("planned", one.planned())
          .put("listed", one.listed())
          .put("broken", one.broken())
          .put("outside_tolerance", one.outsideTolerance());
    }
    ArrayNode outOfRange = root.putArray("out_of_range");
    for (StudyStatus.OutOfRange set : status.outOfRange()) {
      ObjectNode node = outOfRange.addObject();
      node.put("series", set.series()).put("age_days", set.ageDays());
      node.put("range_percent", set.verdict().rangePercent());
      set.verdict().limitPercent().ifPresent(limit -> node.put("limit_percent", limit));
      node.put("words", set.verdict().words());
    }
    ArrayNode unplanned = root.putArray("not_in_the_plan");
    for (StudyStatus.Unplanned one : status.unplanned()) {
      unplanned
          .addObject()
          .put("specimen", one.specimen())
          .put("series", one.series())
          .put("reason", one.reason());
    }
    status.remarks().forEach(root.putArray("remarks")::add);
    return root.toPrettyString();
  }

  private static void due(ArrayNode list, StudyStatus status) {
    for (StudyStatus.DueBreak due : status.due()) {
      ObjectNode node = list.addObject();
      node.put("specimen", due.specimen());
      node.put("series", due.series());
      node.put("age_days", due.ageDays());
      due.due().ifPresent(time -> node.put("due", time.toString()));
      due.tolerance().ifPresent(by -> node.put("tolerance_hours", by.toMinutes() / 60.0));
      due.from().ifPresent(time -> node.put("from", time.toString()));
      due.until().ifPresent(time -> node.put("until", time.toString()));
      node.put("state", due.standing().words());
    }
  }
}
