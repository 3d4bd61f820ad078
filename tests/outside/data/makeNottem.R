# Makes nottem.json: R's own series of monthly mean temperatures at Nottingham Castle, 1920-1939
# (package datasets), and what R's lm says of its mean, yearly cosine and sine.
# Run: Rscript makeNottem.R > nottem.json
y <- as.numeric(nottem)
t <- seq_along(y) - 1
angle <- 2 * pi * t / 12
fit <- lm(y ~ cos(angle) + sin(angle))
show <- function(x) paste(sprintf("%.17g", x), collapse = ",")
cat("{\n")
cat('  "madeBy": "', R.version.string, ', lm(y ~ cos + sin)",\n', sep = "")
cat('  "y": [', show(y), "],\n", sep = "")
cat('  "coefficients": [', show(coef(fit)), "],\n", sep = "")
cat('  "residualVariance": ', show(summary(fit)$sigma^2), ",\n", sep = "")
cat('  "covariance": [', show(as.numeric(vcov(fit))), "]\n", sep = "")
cat("}\n")
