/* unread.h - one question of the table in test-unread.c, as a function. */
#pragma once

#include "store/stead-store.h"

typedef gboolean (*UnreadAsk) (SteadStore *store, gint64 id, GError **error);

#define UNREAD_ASK(scope, name, Type, call) \
  scope gboolean \
  unread_ask_##name (SteadStore *store, gint64 id, GError **error) \
  { \
    g_autoptr(Type) answer = call; \
    return answer != NULL; \
  }

/* In unread-more.c: their headers and those of the others do not go together. */
gboolean unread_ask_trace (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_recall (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_reflect (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_sale_result (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_release (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_skills (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_strip (SteadStore *store, gint64 id, GError **error);
gboolean unread_ask_strip_of (SteadStore *store, gint64 id, GError **error);
