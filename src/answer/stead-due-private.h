/* stead-due-private.h - what looks for due things share: each kind of batch has its own. */
#pragma once

#include "answer/stead-due-answer.h"
#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

/* What one look needs throughout. */
typedef struct
{
  SteadStore      *store;
  SteadDueAnswer  *answer;
  SteadDay         today;
  GError         **error;
} SteadDueLook;

/* Takes @text and @detail over. */
void stead_due_add (SteadDueLook *look,
                    SteadDueKind  kind,
                    SteadTarget   target,
                    gint64        id,
                    char         *text,
                    char         *detail);

/* How the figures of the last of @dues (of SteadDue) come about; takes @worked over. */
void stead_due_explain (GPtrArray *dues,
                        char      *worked);
/* "Nov 1 + 21 days = Nov 22": its day came so many days after the last time. */
void stead_due_explain_day (GPtrArray *dues,
                            SteadDay   last,
                            int        days);

/* Feed of a batch's log that no receipt covers. */
gboolean stead_due_look_at_receipts (SteadDueLook *look,
                                     gint64        batch_id,
                                     const char   *name,
                                     SteadDay      began_on) G_GNUC_WARN_UNUSED_RESULT;

/* Lists of today and older ones that nobody signed, and what is held back. */
gboolean stead_due_look_at_checks (SteadDueLook *look) G_GNUC_WARN_UNUSED_RESULT;

/* Cold places whose air is read: those too warm, creeping up, or not read yet today. */
gboolean stead_due_look_at_coolers (SteadDueLook *look) G_GNUC_WARN_UNUSED_RESULT;

/* Sale days: the next ones, and those that are over but not cashed up. */
gboolean stead_due_look_at_sales (SteadDueLook *look) G_GNUC_WARN_UNUSED_RESULT;

/* All groups of fish under way. */
gboolean stead_due_look_at_fish (SteadDueLook *look) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
