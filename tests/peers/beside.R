# The same jobs with base R: a line each of name, median milliseconds, and what came out.
# Usage: beside.R SERIES FLOW, two CSV files of two columns.
args <- commandArgs(trailingOnly = TRUE)
series <- read.csv(args[1])
flow <- read.csv(args[2])
timed <- function(name, work, rounds = 15, inner = 10) {
  said <- work()
  times <- replicate(rounds, system.time(for (i in seq_len(inner)) work())[["elapsed"]] * 1000 / inner)
  cat(name, sprintf("%.4f", median(times)), sprintf("%.12g", said), sep = "\t")
  cat("\n")
}
timed("four", function() coef(nls(
  u ~ low + span / (1 + exp(-(z - middle) / width)), series,
  start = list(low = min(series$u), span = diff(range(series$u)), middle = 0.5, width = 0.1))))
timed("flow", function() coef(nls(
  stress ~ yielding + k * rate^n, flow, weights = 1 / flow$stress^2,
  start = list(yielding = min(flow$stress) / 2, k = 1, n = 0.5))))
