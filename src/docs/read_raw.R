# Reads a Platenwire raw file: Rscript read_raw.R FILE. Base R only.
path <- commandArgs(trailingOnly = TRUE)[1]
lines <- readLines(path, encoding = "UTF-8")
head <- sub("^# ?", "", lines[seq_len(grep("^seq,", lines)[1] - 1)])
rows <- read.csv(path, comment.char = "#", stringsAsFactors = FALSE,
                 colClasses = c("numeric", "numeric", "character", "character", "numeric", "character"))
stopifnot(rows$seq == seq_len(nrow(rows)))
good <- rows[rows$quality == "ok" & rows$channel != "event", ]
closed <- grep("^# closed ", lines, value = TRUE)
cat(nrow(rows), "rows,", length(head), "lines of head,",
    if (length(closed)) sub("^# ", "", closed) else "not closed", "\n")
for (channel in unique(good$channel)) {
  values <- good$value[good$channel == channel]
  cat(channel, "count", length(values), "min", format(min(values), digits = 15),
      "max", format(max(values), digits = 15), "\n")
}
