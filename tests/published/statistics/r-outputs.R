# Writes r-outputs.ts: what R's stats package gives for the same input. Run: Rscript r-outputs.R > r-outputs.ts, then format it.
# The quadrats are invented; the beetle counts are Bliss (1935), Ann. Appl. Biol. 22, 134-167.
digits15 <- function(x) vapply(x, format, "", digits = 15)
num <- function(x) paste0("[", paste(digits15(x), collapse = ", "), "]")
row <- function(...) num(c(...))
table_of <- function(f, ...) {
  grid <- expand.grid(..., KEEP.OUT.ATTRS = FALSE)
  values <- do.call(f, unname(as.list(grid)))
  rows <- sapply(seq_len(nrow(grid)), function(i) row(unlist(grid[i, ]), values[i]))
  paste0("[\n    ", paste(rows, collapse = ",\n    "), "\n  ]")
}
upper <- function(f) function(...) f(..., lower.tail = FALSE)

out <- list()
out$normalCdf <- table_of(pnorm, c(-37, -12, -5, -1.96, -0.3, 0, 1e-8, 0.7, 2.5, 6))
out$normalQuantile <- table_of(qnorm, c(1e-300, 1e-20, 1e-7, 0.001, 0.025, 0.074, 0.076, 0.3, 0.5, 0.9, 0.975, 0.999999))
out$logGamma <- table_of(lgamma, c(1e-5, 0.1, 0.5, 1, 1.5, 2, 3.7, 10, 14.9, 15, 100, 12345.6, 1e8))
nu <- c(0.5, 1, 2, 3.75, 10, 100, 12345, 1e6)
out$chiSquareCdf <- table_of(pchisq, c(1e-6, 0.5, 3, 12, 90, 12400), nu)
out$chiSquareUpper <- table_of(upper(pchisq), c(0.5, 3, 12, 90, 12400), nu)
probs <- c(1e-6, 0.001, 0.025, 0.4, 0.5, 0.7, 0.975, 0.9999)
out$chiSquareQuantile <- table_of(qchisq, probs, nu)
out$studentTCdf <- table_of(pt, c(-40, -6, -2, -0.4, 0.1, 1.5, 5), nu)
out$studentTQuantile <- table_of(qt, probs, nu)
d2 <- c(0.75, 1, 4.5, 30, 1e6)
out$fCdf <- table_of(pf, c(1e-5, 0.3, 1, 2.7, 50), nu, d2)
out$fUpper <- table_of(upper(pf), c(0.3, 1, 2.7, 50), nu, d2)
# qf(0.001, 1, 1e5) is off by 3e-6 here (its limit, a chi-square quantile, shows it), so the lower degrees stay small.
out$fQuantile <- table_of(qf, c(0.001, 0.025, 0.5, 0.975, 0.999), c(1, 3, 5.5, 120, 1e5), c(1, 4.5, 30))
p15 <- c(.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1)
out$benjaminiHochberg <- paste0('{ "p": ', num(p15), ', "adjusted": ', num(p.adjust(p15, "BH")), " }")

fit_of <- function(name, y, x, w, o, link, quasi) {
  data <- data.frame(y = y)
  formula <- if (is.null(x)) y ~ 1 else y ~ x
  family <- if (quasi) quasibinomial(link) else binomial(link)
  m <- suppressWarnings(glm(formula, family, weights = w, offset = o, epsilon = 1e-15, maxit = 200))
  s <- summary(m)
  paste0('{\n    "name": "', name, '", "link": "', link, '", "family": "', if (quasi) "quasi-binomial" else "binomial", '",\n',
    '    "shares": ', num(y), ',\n    "x": ', if (is.null(x)) "null" else num(x), ',\n    "weights": ', num(w),
    ',\n    "offset": ', num(o), ',\n    "coefficients": ', num(coef(m)), ',\n    "standardErrors": ', num(s$coefficients[, 2]),
    ',\n    "deviance": ', row(deviance(m)), ',\n    "nullDeviance": ', row(m$null.deviance),
    ',\n    "dispersion": ', row(sum(residuals(m, "pearson")^2) / m$df.residual),
    ',\n    "devianceResiduals": ', num(residuals(m, "deviance")), ',\n    "pearsonResiduals": ', num(residuals(m, "pearson")),
    ',\n    "leverages": ', num(hatvalues(m)), ',\n    "fitted": ', num(fitted(m)), "\n  }")
}
dose <- c(1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839)
n <- c(59, 60, 62, 56, 63, 59, 62, 60)
killed <- c(6, 13, 18, 28, 52, 53, 61, 60)
zero <- rep(0, 8)
# Quadrats, invented: stained share, area in square metres, dose at k = 1.
stained <- c(0.08, 0.31, 0.22, 0.55, 0, 0.12, 0.47, 0.71, 0.39, 0.05, 0.63, 0.18)
area <- c(0.25, 0.25, 0.5, 0.25, 0.25, 0.5, 1, 0.25, 0.25, 0.5, 0.25, 1)
u <- c(0.15, 0.48, 0.3, 1.1, 0.04, 0.2, 0.8, 1.5, 0.6, 0.11, 1.2, 0.25)
slope <- c(0, 1, 0, 1, 1, 0, 0, 1, 0, 1, 1, 0)
fits <- c(
  fit_of("beetles", killed / n, dose, n, zero, "cloglog", FALSE),
  fit_of("beetles", killed / n, dose, n, zero, "cloglog", TRUE),
  fit_of("beetles with an offset", killed / n, dose, n, seq(-0.7, 0.7, by = 0.2), "cloglog", FALSE),
  fit_of("beetles with an offset", killed / n, dose, n, seq(-0.7, 0.7, by = 0.2), "logit", FALSE),
  fit_of("quadrats", stained, NULL, area, log(u), "cloglog", TRUE),
  fit_of("quadrats by slope", stained, slope, area, log(u), "cloglog", TRUE),
  fit_of("quadrats by slope", stained, slope, area, log(u), "logit", TRUE)
)
out$fits <- paste0("[", paste(fits, collapse = ", "), "]")
cat('/** Written by r-outputs.R beside this file; do not edit. */\nexport const rOutputs = {\n  "source": "R ', R.version$major, ".", R.version$minor, ', stats package, r-outputs.R beside this file, 15 digits",\n  ', sep = "")
cat(paste0('"', names(out), '": ', unlist(out), collapse = ",\n  "), "\n};\n", sep = "")
