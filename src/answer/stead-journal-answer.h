/* stead-journal-answer.h - "What did this person set out to do, take on, think and show?"
 *
 * Goals, roles and services, thoughts and pictures, as they are chosen for the packet.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_JOURNAL_GOAL,
  STEAD_JOURNAL_ROLE,
  STEAD_JOURNAL_THOUGHT,
  STEAD_JOURNAL_PICTURE,
} SteadJournalKind;

typedef struct
{
  SteadJournalKind  kind;
  gint64            id;
  SteadDay          day;      /* set, begun, written, taken */
  char             *name;     /* of the kind: "Goal", "Service" */
  char             *text;     /* in the person's words, on one line */
  char             *state;    /* "reached on Mar 3, 2026", "in the packet", "no consent of Sam T." */
} SteadJournalRow;

typedef struct
{
  char      *name;            /* of the person */
  GPtrArray *rows;            /* of SteadJournalRow, the latest first */
  int        n_goals, n_reached;
  int        n_roles;
  int        n_thoughts, n_chosen;
  int        n_pictures, n_agreed;
  char      *sentence;        /* markup */
} SteadJournalAnswer;

void stead_journal_answer_free (SteadJournalAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadJournalAnswer, stead_journal_answer_free)

SteadJournalAnswer *stead_journal_answer_new (SteadStore  *store,
                                              gint64       person_id,
                                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
