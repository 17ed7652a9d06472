/* stead-checklist-view-private.h - what the parts of the view of one checklist share. */
#pragma once

#include "answer/stead-check-answer.h"
#include "app/check/stead-checklist-view.h"
#include "app/keep/stead-pick.h"
#include "app/stead-person-pick.h"

G_BEGIN_DECLS

struct _SteadChecklistView
{
  GtkWidget         parent_instance;

  SteadDesk        *desk;
  gint64            list_id;
  SteadCheckAnswer *answer;      /* (nullable): as last shown */
  GPtrArray        *rows;        /* of SteadCheckRow, in the order of the view; they belong to their boxes */
  char             *form;        /* (nullable): which lines stand there, and in which order */

  GtkWidget        *scroller, *buttons, *renew, *delete, *stale_card, *stops, *holds, *lines, *who_card, *sign_box, *sign;
  GtkLabel         *title, *sentence, *caution, *stale, *trouble, *missing, *signed_by;
  SteadPersonPick  *person, *signer;
  SteadPick        *instrument;
};

/* What stops the list from being sold as planned, and what is held back by it. */
void stead_checklist_view_show_stops (SteadChecklistView *self);

G_END_DECLS
