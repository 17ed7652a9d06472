/* stead-journal-pane.h - goals, roles, thoughts and pictures of one person. */
#pragma once

#include "app/show/stead-pick-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_JOURNAL_PANE (stead_journal_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadJournalPane, stead_journal_pane, STEAD, JOURNAL_PANE, SteadPickPane)

G_END_DECLS
