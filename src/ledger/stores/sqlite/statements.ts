import type Database from 'better-sqlite3';

/** Every statement of the store, compiled once. */
export function statements(db: Database.Database) {
  return {
    head: db.prepare(
      `SELECT service, format, position, chain, rewinds, device, seq, last,
       (SELECT count(*) FROM pending) AS pending FROM ledger`,
    ),
    confirmed: db.prepare('SELECT * FROM fact WHERE position > ? ORDER BY position LIMIT ?'),
    chainAt: db.prepare('SELECT chain FROM fact WHERE position = ?').pluck(),
    pending: db.prepare(
      'SELECT id, body, private, aside FROM pending ORDER BY place LIMIT ? OFFSET ?',
    ),
    known: db
      .prepare(
        `SELECT EXISTS (SELECT 1 FROM fact WHERE id = @id)
         OR EXISTS (SELECT 1 FROM pending WHERE id = @id)`,
      )
      .pluck(),
    erased: db.prepare('SELECT id FROM erased').pluck(),
    meta: db.prepare('SELECT value FROM meta WHERE key = ?').pluck(),
    metas: db.prepare(
      'SELECT key, value FROM meta WHERE substr(key, 1, length(@prefix)) = @prefix',
    ),
    setMeta: db.prepare('INSERT OR REPLACE INTO meta VALUES(?, ?)'),
    dropMeta: db.prepare('DELETE FROM meta WHERE key = ?'),
    append: db.prepare('INSERT INTO fact VALUES(?, ?, ?, ?, ?, ?, ?, ?)'),
    wait: db.prepare(
      `INSERT INTO pending(place, id, body, private) SELECT ?, @id, @body, @private
       WHERE NOT EXISTS (SELECT 1 FROM fact WHERE id = @id) ON CONFLICT(id) DO NOTHING`,
    ),
    firstPlace: db.prepare('SELECT coalesce(min(place), 0) FROM pending').pluck(),
    nextPlace: db.prepare('SELECT coalesce(max(place), 0) + 1 FROM pending').pluck(),
    waitAgain: db.prepare(
      `INSERT INTO pending(place, id, body, private)
       SELECT ? + position, id, body, private FROM fact WHERE position > ?`,
    ),
    leaveLog: db.prepare('DELETE FROM fact WHERE position > ?'),
    waitsNoLonger: db.prepare('DELETE FROM pending WHERE id = ?'),
    setAside: db.prepare('UPDATE pending SET aside = ? WHERE id = ?'),
    isErased: db.prepare('SELECT 1 FROM erased WHERE id = ?').pluck(),
    remember: db.prepare('INSERT OR IGNORE INTO erased VALUES(?)'),
    scrubFact: db.prepare('UPDATE fact SET private = NULL WHERE id = ? AND private IS NOT NULL'),
    scrubPending: db.prepare(
      'UPDATE pending SET private = NULL WHERE id = ? AND private IS NOT NULL',
    ),
    moveHead: db.prepare('UPDATE ledger SET position = ?, chain = ?'),
    takeBack: db.prepare('UPDATE ledger SET position = ?, chain = ?, rewinds = rewinds + 1'),
    moveDevice: db.prepare('UPDATE ledger SET device = ?, seq = ?, last = ?'),
    raiseFormat: db.prepare('UPDATE ledger SET format = max(format, ?)'),
    snapshot: db.prepare('SELECT part, position, chain, state FROM snapshot WHERE fold = ?'),
    lowerSnapshots: db.prepare('UPDATE snapshot SET position = ?, chain = ? WHERE position > ?'),
    dropSnapshots: db.prepare('DELETE FROM snapshot'),
    keepSnapshot: db.prepare('INSERT INTO snapshot VALUES(?, ?, ?, ?, ?)'),
  };
}

export type Statements = ReturnType<typeof statements>;
