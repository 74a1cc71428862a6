#include "store/book/head_signer.h"

#include <utility>

namespace rb::store {

namespace {

template <class Bytes>
void bind(SQLite::Statement& statement, int index, const Bytes& bytes) {
  statement.bind(index, bytes.data(), static_cast<int>(bytes.size()));
}

}  // namespace

bool calls_for_signing(const Happening& what) {
  return std::holds_alternative<event::PourClose>(what) ||
         std::holds_alternative<event::Sign>(what);
}

HeadSigner::HeadSigner(const SQLite::Database& database, DeviceKey key, std::string uuid)
    : key_(std::move(key)),
      uuid_(std::move(uuid)),
      has_key_(database, "SELECT 1 FROM keys WHERE key = ?"),
      add_key_(database, "INSERT INTO keys (key, since) VALUES (?, ?)"),
      add_head_(database,
                "INSERT INTO heads (seq, hash, key, signature, made) VALUES (?, ?, ?, ?, ?)") {}

void HeadSigner::sign(const Head& head, Moment made) {
  const auto& key = key_.public_key();
  const auto at = made.time_since_epoch().count();
  bool known = false;
  {
    Use use(has_key_);
    bind(has_key_, 1, key);
    known = use->executeStep();
  }
  if (!known) {
    Use use(add_key_);
    bind(add_key_, 1, key);
    use->bind(2, static_cast<std::int64_t>(at));
    use->exec();
  }
  const auto signature = key_.sign({uuid_, head.seq, head.hash, at});
  Use use(add_head_);
  use->bind(1, head.seq);
  bind(add_head_, 2, head.hash);
  bind(add_head_, 3, key);
  bind(add_head_, 4, signature);
  use->bind(5, static_cast<std::int64_t>(at));
  use->exec();
}

}  // namespace rb::store
