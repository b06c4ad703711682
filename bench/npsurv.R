# Times the interval-censored estimate of R's npsurv on a file of intervals: log-likelihood and seconds, round by round.
words <- commandArgs(trailingOnly = TRUE)
suppressMessages(library(npsurv))
intervals <- as.matrix(read.csv(words[1], header = FALSE))
for (round in seq_len(as.integer(words[2]))) {
  started <- proc.time()[["elapsed"]]
  fit <- npsurv(intervals, maxit = 1000)
  cat(sprintf("%.9f %.17g\n", proc.time()[["elapsed"]] - started, fit$ll))
}
