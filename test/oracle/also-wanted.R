# Makes also-wanted.json: functions whose values come from running R, not from a printed page.
# Rscript test/oracle/also-wanted.R > test/oracle/also-wanted.json
suppressMessages({
  library(jsonlite); library(survival); library(surveillance); library(epiR); library(EpiEstim)
})
out <- list()
add <- function(id, fn, input, expected, tolerance, source, note = NULL) {
  o <- list(id = id, fn = fn, input = input, expected = expected, tolerance = tolerance,
            kind = "reference-run", source = source)
  if (!is.null(note)) o$note <- note
  out[[length(out) + 1]] <<- o
}
detect <- function(N, D, n, se) { k <- 0:min(D, n); 1 - sum(dhyper(k, D, N - D, n) * (1 - se)^k) }
least <- function(N, D, se, conf) { n <- which(sapply(1:N, function(n) detect(N, D, n, se)) >= conf - 1e-12); if (length(n)) n[1] else NA }

rows <- lapply(c(10, 24, 60), function(N) { D <- c(5, 2, 1); list(N = N, D = D,
  n80 = sapply(D, function(d) least(N, d, .8, .95)), n95 = sapply(D, function(d) least(N, d, .95, .95))) })
add("ALSO-01", "sampleSizeTable95imperfect", list(confidence = .95, sens = c(.8, .95)), list(rows = rows), 0, "R dhyper, search over n")

p <- c(.02, .3, .5, .07, .9); pmf <- 1
for (q in p) pmf <- c(pmf * (1 - q), 0) + c(0, pmf * q)
add("ALSO-02", "numberInfectedDistribution", list(post = p), list(pmf = pmf), 1e-14, "R, convolution")

for (a in list(c(24, 20, .7, .95), c(60, 30, .8, .99), c(12, 12, .5, .9))) {
  D <- 0:a[1]
  add(sprintf("ALSO-03-%d", a[1]), "maxInfectedConsistent", list(N = a[1], n = a[2], sens = a[3], confidence = a[4]),
      list(epiRpstar = rsu.pstar(N = a[1], n = a[2], se.p = a[4], se.u = a[3]),
           exactMaxD = max(D[sapply(D, function(d) detect(a[1], d, a[2], a[3])) < a[4]])), 1e-10,
      "epiR rsu.pstar; R dhyper, largest D whose detection stays under the confidence")
}
counts <- c(1, 0, 2, 1, 0, 0, 3, 1); n <- c(24, 18, 30, 24, 12, 6, 26, 22); lam <- .2; p0 <- .03; L <- 2.7
z <- p0; v <- 0; zs <- us <- c()
for (i in seq_along(n)) { z <- lam * counts[i] / n[i] + (1 - lam) * z; v <- lam^2 * p0 * (1 - p0) / n[i] + (1 - lam)^2 * v; zs <- c(zs, z); us <- c(us, p0 + L * sqrt(v)) }
add("ALSO-04", "ewmaProportion", list(counts = counts, n = n, lambda = lam, p0 = p0, L = L), list(z = zs, ucl = us), 1e-12, "R arithmetic, recursive binomial variance")

ns <- c(5, 24, 60, 100, 250); k <- sapply(ns, function(n) { c <- 0:(n + 1); c[pbinom(c - 1, n, .03, lower.tail = FALSE) <= .005][1] })
add("ALSO-05", "binomialSignalCount", list(n = ns, p = .03, alpha = .005), list(signalAtOrAbove = k, prob = pbinom(k - 1, ns, .03, lower.tail = FALSE)), 1e-14, "R pbinom")
for (a in list(c(.001, .005), c(.004, .01), c(.02, .005))) {
  g <- (-1:400)[max(which(pgeom(-1:400, a[1]) <= a[2]))]
  add(sprintf("ALSO-06-%g", a[1]), "gChartLowerSignal", list(p = a[1], alpha = a[2]), list(maxGapSignal = g), 0, "R pgeom")
}
for (a in list(c(1, 1.5, 5), c(2.4, 3, 10), c(.5, .7, 3.5), c(.2, .4, 2.2)))
  add(sprintf("ALSO-07-%g", a[1]), "poissonCusumArl", list(mu = a[1], k = a[2], h = a[3]), list(arl = arlCusum(h = a[3], k = a[2], theta = a[1])$ARL), 1e-8, "surveillance arlCusum (Brook & Evans)")

t <- c(6,6,6,6,7,9,10,10,11,13,16,17,19,20,22,23,25,32,32,34,35,1,1,2,2,3,4,4,5,5,8,8,8,8,11,11,12,12,15,17,22,23)
e <- c(1,1,1,0,1,0,1,0,0,1,1,0,0,0,1,1,0,0,0,0,0,rep(1, 21)); g <- rep(1:2, each = 21)
for (rho in c(1, .5)) add(sprintf("ALSO-08-%g", rho), "petoWilcoxon", list(as = "SURV-03", rho = rho), list(chi2 = survdiff(Surv(t, e) ~ g, rho = rho)$chisq), 1e-9, "R survdiff(rho =)")

time <- c(18,20,21,22,22,23,24,25,26,26,27,28,30,31,33,36,38,41,44,47,52,55,61,70,76,20,24,30,40,55,80); ev <- c(rep(1, 25), rep(0, 6))
for (a in list(c(24, 72), c(0, 48), c(36, 60))) {
  f <- summary(survfit(Surv(time, ev) ~ 1, subset = time > a[1]), times = a[2], extend = TRUE)
  se <- f$std.err / f$surv; s <- f$surv
  add(sprintf("ALSO-09-%d", a[1]), "conditionalArrivalCI", list(time = time, event = ev, ageNow = a[1], by = a[2]),
      list(p = 1 - s, lower = 1 - min(1, s * exp(qnorm(.975) * se)), upper = 1 - s * exp(-qnorm(.975) * se), seLog = se), 1e-10,
      "R survfit of those still out after the age, log interval")
}
f <- survreg(Surv(time, ev) ~ 1, dist = "lognormal", control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
add("ALSO-10", "lognormalFit", list(time = time, event = ev), list(meanlog = unname(coef(f)), sdlog = f$scale, logLik = f$loglik[1]), 1e-6, "R survreg(dist = 'lognormal')")

st <- c(1,1,2,1,1,0,1,2,1,1,0,1,1,2,1,1,1,0,1,1,1,2,1,1,1,0,0,1,0,2,0)
f <- survfit(Surv(time, factor(st, 0:2)) ~ 1); s <- summary(f, times = c(20, 24, 36, 48, 72), extend = TRUE)$pstate
add("ALSO-11", "cumulativeIncidence", list(time = time, state = st, times = c(20, 24, 36, 48, 72)), list(result = s[, 2], void = s[, 3], pending = s[, 1]), 1e-12, "R survfit, multi-state (Aalen-Johansen)")

gw <- function(m, p) { pm <- numeric(m + 1); r <- numeric(m + 1); r[m + 1] <- 1
  for (s in m:0) { if (s > 0) for (k in 1:s) r[s - k + 1] <- r[s - k + 1] + r[s + 1] * dbinom(k, s, p); pm[m - s + 1] <- r[s + 1] * dbinom(0, s, p) }; pm }
add("ALSO-12", "greenwoodFinalSize", list(susceptible = 4, introductions = 2, p = .3), list(pmfNewCases = gw(4, .3)), 1e-13, "R dbinom, chain enumeration")
lk <- function(n, B, Q) { m <- numeric(n + 1); for (k in 0:n) { for (j in 0:k) if (j < k) m[k + 1] <- m[k + 1]; }
  mm <- matrix(0, n + 1, n + 1); mm[1, 1] <- 1
  for (k in 1:n) { for (j in 0:(k - 1)) mm[j + 1, k + 1] <- choose(k, j) * mm[j + 1, j + 1] * B^(k - j) * Q^(j * (k - j)); mm[k + 1, k + 1] <- 1 - sum(mm[1:k, k + 1]) }
  mm[, n + 1] }
add("ALSO-13", "longiniKoopman", list(n = 5, escapeCommunity = .86, escapePerInfective = .75), list(pmf = lk(5, .86, .75)), 1e-13, "R, the recursion of Longini & Koopman (1982)")

day <- c(0, 2, 3, 20, 22, 23, 40, 41, 5, 60); unit <- c(1, 1, 1, 2, 2, 2, 3, 3, 2, 1)
i <- which(lower.tri(diag(10)), arr.ind = TRUE); dt <- abs(day[i[, 1]] - day[i[, 2]]); ds <- as.numeric(unit[i[, 1]] != unit[i[, 2]])
set.seed(1); kx <- knox(dt, ds, eps.t = 5, eps.s = 0, B = 99999, .verbose = FALSE)
lam <- sum(dt <= 5) * sum(ds == 0) / length(dt)
add("ALSO-14", "knoxTest", list(day = day, unit = unit, windowDays = 5, sameUnit = TRUE),
    list(statistic = unname(kx$statistic), timePairs = sum(dt <= 5), spacePairs = sum(ds == 0), lambda = lam, pPoisson = ppois(kx$statistic - 1, lam, lower.tail = FALSE), pPermutation = as.numeric(kx$p.value)), 2e-3,
    "surveillance knox (B = 99,999; pairs shuffled); R ppois")

m <- 2.4 * 3; v <- m + 2.4^2 * 1.2^2
add("ALSO-15", "reorderPointRandomLead", list(demandPerDay = 2.4, leadMean = 3, leadSd = 1.2, service = .95, dist = "negbin"), list(mean = m, var = v, reorderPoint = qnbinom(.95, size = m^2 / (v - m), mu = m)), 1e-10, "R qnbinom")
y <- c(0, 3, 1, 7, 2, 0, 5, 9, 1, 2)
add("ALSO-16", "negBinMoments", list(y = y), list(mean = mean(y), var = var(y), size = mean(y)^2 / (var(y) - mean(y))), 1e-12, "R mean, var")

# Two groups: the triangular equations in R, small enough to lose no figures.
two <- function(mR, mS, aR, aS, b, phi) {
  P <- matrix(0, mR + 1, mS + 1)
  for (j in 0:mR) for (k in 0:mS) {
    sR <- b$rr * (mR - j) + b$rs * (mS - k); sS <- b$sr * (mR - j) + b$ss * (mS - k); s <- 0
    for (u in 0:j) for (w in 0:k) if (u < j || w < k) s <- s + choose(mR - u, j - u) * choose(mS - w, k - w) * P[u + 1, w + 1] / (phi(sR)^(u + aR) * phi(sS)^(w + aS))
    P[j + 1, k + 1] <- (choose(mR, j) * choose(mS, k) - s) * phi(sR)^(j + aR) * phi(sS)^(k + aS)
  }
  P }
for (law in c("exponential mean 1", "fixed 1")) {
  phi <- if (law == "fixed 1") function(s) exp(-s) else function(s) 1 / (1 + s)
  b <- list(rr = .12, rs = .05, sr = .08, ss = .1)
  P <- two(6, 5, 1, 1, b, phi)
  add(paste0("ALSO-17-", substr(law, 1, 5)), "twoTypeFinalSize",
      list(residents = 6, staff = 5, introductions = list(residents = 1, staff = 1), rate = list(residentToResident = .12, residentToStaff = .05, staffToResident = .08, staffToStaff = .1), infectiousPeriod = law),
      list(residents = rowSums(P), staff = colSums(P), meanResidents = sum(0:6 * rowSums(P)), meanStaff = sum(0:5 * colSums(P)), pNone = P[1, 1]), 1e-10,
      "R, the triangular equations of Ball (1986)")
}
# Check characters by the formula each standard prints, not by the running states the project uses.
chars <- strsplit("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*", "")[[1]]
val <- function(s, set = chars) match(strsplit(s, "")[[1]], set) - 1
mod10 <- function(sum) as.character((10 - sum %% 10) %% 10)
luhnCheck <- function(s) { d <- rev(val(s)); o <- seq_along(d) %% 2 == 1; x <- ifelse(o, 2 * d, d); mod10(sum(x %/% 10 + x %% 10)) }
gs1Check <- function(s) { d <- rev(val(s)); mod10(sum(d * ifelse(seq_along(d) %% 2 == 1, 3, 1))) }
powmod <- function(r, k, m) { x <- 1; for (i in seq_len(k)) x <- (x * r) %% m; x }
# ISO/IEC 7064 pure: sum of value times radix^place is 1 modulo M. Two characters can hold more than M values:
# where two pairs would pass, the one of ISO 13616 (98 less the remainder, 02 to 98) is made.
pureCheck <- function(M, r, set, out, len) function(s) {
  v <- rev(val(s, set)); w <- sapply(seq_along(v) + len - 1, function(k) powmod(r, k, M))
  c <- M + 1 - sum((v * w) %% M) %% M
  if (len == 1) out[c %% M + 1] else paste0(out[c %/% r + 1], out[c %% r + 1]) }
# ISO/IEC 7064 hybrid: product starts at M; add, reduce to 1..M, double modulo M + 1.
hybridCheck <- function(M, set) function(s) {
  P <- M; for (v in val(s, set)) { S <- (P + v) %% M; if (S == 0) S <- M; P <- (2 * S) %% (M + 1) }
  set[(M + 1 - P) %% M + 1] }
# Verhoeff (1969): the group table as printed, the inverse looked up in it.
D5 <- matrix(c(0,1,2,3,4,5,6,7,8,9, 1,2,3,4,0,6,7,8,9,5, 2,3,4,0,1,7,8,9,5,6, 3,4,0,1,2,8,9,5,6,7, 4,0,1,2,3,9,5,6,7,8,
  5,9,8,7,6,0,4,3,2,1, 6,5,9,8,7,1,0,4,3,2, 7,6,5,9,8,2,1,0,4,3, 8,7,6,5,9,3,2,1,0,4, 9,8,7,6,5,4,3,2,1,0), 10, byrow = TRUE)
perm <- c(1,5,7,6,2,8,3,0,9,4)
verhoeffCheck <- function(s) { c <- 0; d <- rev(val(s)); for (i in seq_along(d)) { x <- d[i]; for (t in seq_len(i %% 8)) x <- perm[x + 1]; c <- D5[c + 1, x + 1] }; as.character(which(D5[c + 1, ] == 0) - 1) }
weights11 <- function(s, w) (11 - sum(val(s) * w) %% 11) %% 11
nhsCheck <- function(s) as.character(weights11(s, 10:2))
isbnCheck <- function(s) c(0:9, "X")[weights11(s, 10:2) + 1]
s10Check <- function(s) { c <- 11 - sum(val(s) * c(8,6,4,2,3,5,9,7)) %% 11; as.character(if (c == 10) 0 else if (c == 11) 5 else c) }
set39 <- strsplit("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%", "")[[1]]
code39Check <- function(s) set39[sum(val(s, set39)) %% 43 + 1]
digits <- c("4", "07", "236", "9040181", "5501298806", "00000000001", "840539217764")
words <- c("A", "Z0", "TR5K2", "QX7Y81M", "00HOME24", "B3F9W6J1N5")
letters26 <- c("A", "ZQ", "BAISDLAFK", "SWABTUBE")
for (a in list(list("luhn", luhnCheck, digits), list("gs1-mod10", gs1Check, digits), list("verhoeff", verhoeffCheck, digits),
  list("iso7064-mod11-2", pureCheck(11, 2, chars, c(0:9, "X"), 1), digits),
  list("iso7064-mod37-2", pureCheck(37, 2, chars, chars, 1), words),
  list("iso7064-mod97-10", pureCheck(97, 10, chars, chars, 2), digits),
  list("iso7064-mod661-26", pureCheck(661, 26, LETTERS, LETTERS, 2), letters26),
  list("iso7064-mod1271-36", pureCheck(1271, 36, chars, chars, 2), words),
  list("iso7064-mod11-10", hybridCheck(10, chars[1:10]), digits),
  list("iso7064-mod27-26", hybridCheck(26, LETTERS), letters26),
  list("iso7064-mod37-36", hybridCheck(36, chars[1:36]), words),
  list("nhs-mod11", nhsCheck, c("943476591", "401023213", "987654432", "123456788")),
  list("isbn10", isbnCheck, c("030640615", "043942089", "097522980")),
  list("upu-s10", s10Check, c("47312482", "12345678", "00000001", "98765432")),
  list("code39-mod43", code39Check, c("ABC-12", "SWAB 7/4", "TR.5+%"))))
  add(paste0("ALSO-18-", a[[1]]), "checkDigits", list(system = a[[1]], payloads = a[[3]]),
      list(check = unname(sapply(a[[3]], a[[2]]))), 0, "R arithmetic, the formula of the standard")

# Few days of counts and an interval longer than they are, and many days.
flu <- c(1, 1, 0, 2, 5, 3, 3, 3, 6, 2, 5, 9, 13, 12, 13, 11, 12, 6, 6, 6, 3, 1, 0, 2, 0, 0, 0, 0, 2, 0, 2, 0)
few <- c(3, 2, 5, 4, 6, 8, 7, 9)
for (a in list(list("few", few, 7.5, 3.4, 7), list("early", few, 7.5, 3.4, 3),
               list("growing", c(1, 2, 4, 8, 9, 12, 20, 25), 4.7, 2.9, 3), list("many", flu, 4.7, 2.9, 7))) {
  from <- 2:(length(a[[2]]) - a[[5]] + 1)
  r <- suppressWarnings(suppressMessages(estimate_R(a[[2]], method = "parametric_si", config = make_config(
    list(mean_si = a[[3]], std_si = a[[4]], t_start = from, t_end = from + a[[5]] - 1)))))$R
  add(paste0("ALSO-19-", a[[1]]), "estimateR", list(incidence = a[[2]], siMean = a[[3]], siSd = a[[4]], window = a[[5]]),
      list(tEnd = I(r$t_end), mean = I(r[["Mean(R)"]]), sd = I(r[["Std(R)"]]), q025 = I(r[["Quantile.0.025(R)"]]),
           median = I(r[["Median(R)"]]), q975 = I(r[["Quantile.0.975(R)"]])), 1e-9,
      "R package EpiEstim 2.2.4, estimate_R(parametric_si)")
}

# Beyond the longest wait, and where nothing came: R carries the last step on.
for (a in list(c(2, 9.5), c(5, 8), c(9, 12))) {
  t <- c(1, 2, 3, 4, 9); e <- c(1, 1, 1, 1, 0)
  r <- summary(survfit(Surv(t, e) ~ 1, conf.type = "log", subset = t > a[1] | t == 9), times = a[2], extend = TRUE)
  add(paste0("ALSO-20-", a[1]), "conditionalArrivalCI", list(time = t, event = e, ageNow = a[1], by = a[2]),
      list(p = 1 - r$surv, lower = 1 - r$upper, upper = 1 - r$lower), 1e-9,
      "R survival: survfit of those still out at the age, summary(extend = TRUE)")
}

for (a in list(c(80, 57, 1501), c(13, 8.142857142857142, 154.28571428571428), c(5, 4, 4), c(9, 4, 2)))
  add(sprintf("ALSO-21-%d", a[1]), "stockoutProb", list(onHand = a[1], mean = a[2], variance = a[3]),
      list(p = if (a[3] > a[2]) pnbinom(a[1], size = a[2]^2 / (a[3] - a[2]), mu = a[2], lower = FALSE)
               else ppois(a[1], a[2], lower = FALSE)), 1e-12, "R pnbinom, and ppois where it varies no more than Poisson")
# Two batches, a day's demand of mean 2 and variance 9: its days add up to the same prob and the sum of the sizes.
prob <- 2 / 9; nb <- function(u, days) dnbinom(u, size = 2 * days * prob / (1 - prob), prob = prob)
first <- sum((30 - 0:30) * nb(0:30, 10))
spent <- c(sum(nb(0:30, 10)), nb(31:49, 10)); spent <- c(spent, 1 - sum(spent)); second <- 0
for (k in 0:20) for (x in 0:(20 - k)) second <- second + spent[k + 1] * nb(x, 15) * (20 - k - x)
add("ALSO-22", "expectedExpiryWaste", list(batches = data.frame(quantity = c(30, 20), expiryDay = c(10, 25)),
    demandPerDay = 2, variancePerDay = 9), list(wasteByBatch = c(first, second), total = first + second), 1e-9,
    "R dnbinom, the law of what is used carried from one expiry to the next")

cat("[\n"); cat(paste0("  ", sapply(out, toJSON, auto_unbox = TRUE, digits = NA, na = "null"), collapse = ",\n")); cat("\n]\n")
