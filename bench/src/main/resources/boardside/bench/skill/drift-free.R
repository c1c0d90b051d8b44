# Fits the model without drift with glmmTMB and lme4; see DriftFreeBench. Arguments: the cells, whether to run lme4.
args <- commandArgs(trailingOnly = TRUE)
d <- read.csv(args[1])
names(d)[7] <- "inn"
d$day <- factor(d$day)
d$bag <- factor(d$bag)
d$crossed <- interaction(d$bag, d$approach)
spline <- paste0("s", 1:10, collapse = " + ")
model <- function(left) as.formula(paste(left,
    "~ approach + board +", spline, "+ (1 | day) + (1 | bag) + (1 | crossed)"))
show <- function(name, what, fixed, sds, logLik, seconds) cat(sprintf(
    "%s %s approach %.5f narrow %.5f day %.5f bag %.5f crossed %.5f logLik %.4f\n         seconds by the clock %.2f, of processor %.2f\n",
    name, what, fixed["approach"], fixed["board"], sds["day"], sds["bag"], sds["crossed"], logLik,
    seconds["elapsed"], seconds["user.self"] + seconds["sys.self"]))
responses <- c("kept" = "cbind(kept, n - kept)", "in  " = "cbind(inn, kept - inn)")
if (suppressWarnings(requireNamespace("glmmTMB", quietly = TRUE))) {
  suppressWarnings(library(glmmTMB))
  for (what in names(responses)) {
    seconds <- system.time(fit <- glmmTMB(model(responses[what]), family = binomial, data = d))
    sds <- sapply(VarCorr(fit)$cond, function(v) attr(v, "stddev"))
    names(sds) <- sub("\\..*", "", names(sds))
    show("glmmTMB ", what, fixef(fit)$cond, sds, as.numeric(logLik(fit)), seconds)
  }
} else cat("glmmTMB is not installed: skipped\n")
if (args[2] != "true") quit()
if (requireNamespace("lme4", quietly = TRUE)) {
  for (what in names(responses)) {
    seconds <- system.time(fit <- suppressWarnings(suppressMessages(
        lme4::glmer(model(responses[what]), family = binomial, data = d))))
    sds <- sapply(lme4::VarCorr(fit), function(v) attr(v, "stddev"))
    names(sds) <- sub("\\..*", "", names(sds))
    show("lme4    ", what, lme4::fixef(fit), sds, as.numeric(logLik(fit)), seconds)
  }
} else cat("lme4 is not installed: skipped\n")
