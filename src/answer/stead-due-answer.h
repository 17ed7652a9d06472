/* stead-due-answer.h - "What is due, and what is wrong?" and the strip's live figures. */
#pragma once

#include "answer/stead-words.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_DUE_TASK,      /* to be done today */
  STEAD_DUE_WARNING,   /* something is out of limits or will run out */
  STEAD_DUE_DONE,      /* done today: shown struck off, so that a day looks done */
} SteadDueKind;

/* Where a line leads. */
typedef enum
{
  STEAD_TARGET_NONE,
  STEAD_TARGET_FLOCK,       /* Raise, that flock, its quick form */
  STEAD_TARGET_BATCH,       /* Raise, any batch, its quick form */
  STEAD_TARGET_WATER,       /* Raise, that water, its test sheet */
  STEAD_TARGET_ITEM,        /* Keep, that item */
  STEAD_TARGET_LOT,
  STEAD_TARGET_RECEIPT,
  STEAD_TARGET_ASSET,
  STEAD_TARGET_PRODUCT,     /* Price, that product */
  STEAD_TARGET_NEW_RECEIPT, /* Keep, a new receipt for that item */
  STEAD_TARGET_RECIPE,      /* Make, that recipe; 0: a new one */
  STEAD_TARGET_KITCHEN,     /* Make, that kitchen batch */
  STEAD_TARGET_CHECKLIST,   /* Check, that list */
  STEAD_TARGET_HOLD,        /* Check, what is held back */
  STEAD_TARGET_COOLER,      /* Check, the air of that cold place */
  STEAD_TARGET_SALE,        /* Sell, that sale day */
  STEAD_TARGET_PERSON,      /* Show, that person; 0: the class */
  STEAD_TARGET_HOURS,       /* Show, hours of that person; 0: of all */
  STEAD_TARGET_BUILD,       /* Fund, that build */
  STEAD_TARGET_SKILLS,      /* Show, the skills of that person */
  STEAD_TARGET_EVENT,       /* Show, that event */
  STEAD_TARGET_PACKET,      /* Show, that packet */
  STEAD_TARGET_JOURNAL,     /* Show, goals, thoughts and pictures of that person */
} SteadTarget;

typedef struct
{
  SteadDueKind  kind;
  char         *text;     /* "Collect and count the eggs of Brown hens." */
  char         *detail;   /* (nullable): why, or what to do first */
  SteadTarget   target;
  gint64        id;
  gint64        routine_id;   /* a task of a routine, which is marked done where it stands; 0: none */
  char         *worked;       /* (nullable): how its figures come about */
} SteadDue;

void stead_due_free (SteadDue *due);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadDue, stead_due_free)

typedef struct
{
  GPtrArray *dues;        /* of SteadDue: warnings first, then tasks, then done */
  int        n_tasks;
  int        n_warnings;
  int        n_coolers;     /* among the warnings: coolers that are too warm, or soon will be */
  char      *sentence;    /* markup: "3 things are due and 1 needs a look." */
} SteadDueAnswer;

/* (transfer full): of SteadWhy: how many things there are, and why a line stands there; empty without lines */
GPtrArray *stead_due_answer_whys (const SteadDueAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

void stead_due_answer_free (SteadDueAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadDueAnswer, stead_due_answer_free)

SteadDueAnswer *stead_due_answer_new (SteadStore  *store,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The strip: one live figure a place, short ("3 due, 1 warning"; "1 batch"; "$2.41 a dozen"). */
typedef struct
{
  char     *today;
  gboolean  today_warns;
  char     *raise;
  char     *make;    /* next kitchen day */
  char     *check;   /* readings out or missing */
  gboolean  check_warns;
  char     *price;   /* cost of the selected product */
  char     *sell;    /* next sale day */
  char     *fund;    /* share of a build that is funded */
  char     *keep;    /* value of what is on hand */
  char     *show;    /* hours of the school year */
  /* The same where there is little room: "3 due", "$2.41"; %NULL: it is short already. */
  char     *today_brief;
  char     *make_brief;
  char     *check_brief;
  char     *price_brief;
  char     *sell_brief;
  char     *fund_brief;
  char     *keep_brief;
  char     *show_brief;
} SteadStripAnswer;

void stead_strip_answer_free (SteadStripAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStripAnswer, stead_strip_answer_free)

/* @due: (nullable): what is due, where the caller has it already; %NULL: it is found here
 * @product_id: the product selected in Price; 0: the first one */
SteadStripAnswer *stead_strip_answer_new (SteadStore            *store,
                                          const SteadDueAnswer  *due,
                                          gint64                 product_id,
                                          GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
