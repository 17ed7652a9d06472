/* stead-jump-goal.h - what the jump field can lead to. */
#pragma once

#include <glib-object.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

/* One line of the list. */
typedef struct
{
  char        *title;
  const char  *kind;      /* "Flock", "Document": translated, never freed */
  const char  *icon;
  SteadTarget  target;    /* a place that shows it, … */
  gint64       id;
  char        *action;    /* (nullable): … or a window's action, in full: "win.settings" */
  char        *paper;     /* (nullable): … or a document, … */
  char        *of;        /* (nullable): … of this product or flock */
} SteadJumpGoal;

void stead_jump_goal_free (SteadJumpGoal *goal);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadJumpGoal, stead_jump_goal_free)

/* Returns: (transfer full) (element-type SteadJumpGoal): what has @text in its name,
 * things of the farm first, then documents, then commands; all that is near if @text
 * is empty.  @papers_only: nothing but documents */
GPtrArray *stead_jump_goals_find (SteadStore *store,
                                  const char *text,
                                  gboolean    papers_only) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
