/**
 * One file a service. Bodies and instants are text, so the bytes that were hashed are the bytes
 * that are kept. There is no index on `chain`: it is only ever read by position, and indexing it
 * more than halves the rate of appends.
 *
 * The triggers hold the promises against any program that opens the file, ours included: a fact
 * leaves the log only to wait again, waits until it stands in the log, and never changes but to
 * lose its private part.
 */
export const SCHEMA = `
CREATE TABLE IF NOT EXISTS ledger(one INTEGER PRIMARY KEY CHECK(one = 1), service TEXT NOT NULL,
  format INTEGER NOT NULL, position INTEGER NOT NULL, chain TEXT NOT NULL,
  rewinds INTEGER NOT NULL DEFAULT 0, device TEXT, seq INTEGER, last TEXT) STRICT;
CREATE TABLE IF NOT EXISTS fact(position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE,
  body TEXT NOT NULL, private TEXT, arrived TEXT NOT NULL, via TEXT NOT NULL,
  skew INTEGER NOT NULL, chain TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS pending(place INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE,
  body TEXT NOT NULL, private TEXT, aside TEXT) STRICT;
CREATE TABLE IF NOT EXISTS erased(id TEXT PRIMARY KEY) STRICT, WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS snapshot(fold INTEGER NOT NULL, part TEXT NOT NULL,
  position INTEGER NOT NULL, chain TEXT NOT NULL, state TEXT NOT NULL,
  PRIMARY KEY(fold, part)) STRICT;
CREATE TABLE IF NOT EXISTS meta(key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;

CREATE TRIGGER IF NOT EXISTS fact_stays BEFORE DELETE ON fact
WHEN NOT EXISTS (SELECT 1 FROM pending WHERE id = OLD.id AND body = OLD.body)
BEGIN SELECT RAISE(ABORT, 'a fact leaves the log only to wait again'); END;
CREATE TRIGGER IF NOT EXISTS fact_stands BEFORE UPDATE ON fact
WHEN NEW.private IS NOT NULL OR NEW.position IS NOT OLD.position OR NEW.id IS NOT OLD.id
  OR NEW.body IS NOT OLD.body OR NEW.arrived IS NOT OLD.arrived OR NEW.via IS NOT OLD.via
  OR NEW.skew IS NOT OLD.skew OR NEW.chain IS NOT OLD.chain
BEGIN SELECT RAISE(ABORT, 'a fact may only lose its private part'); END;
CREATE TRIGGER IF NOT EXISTS pending_stays BEFORE DELETE ON pending
WHEN NOT EXISTS (SELECT 1 FROM fact WHERE id = OLD.id AND body = OLD.body)
BEGIN SELECT RAISE(ABORT, 'a fact waits until it stands in the log'); END;
CREATE TRIGGER IF NOT EXISTS pending_stands BEFORE UPDATE ON pending
WHEN NEW.id IS NOT OLD.id OR NEW.body IS NOT OLD.body
  OR (NEW.private IS NOT OLD.private AND NEW.private IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'a fact may only lose its private part'); END;
CREATE TRIGGER IF NOT EXISTS erased_stays BEFORE DELETE ON erased
BEGIN SELECT RAISE(ABORT, 'an erasure is never forgotten'); END;
`;
