/* stead-label-answer.h - "What must stand on the label of this pack, and how large?"
 *
 * What the law words itself ("Keep refrigerated", "Contains") stands in its own
 * English in every language of the program.  Whatever is missing for a complete
 * label is told; nothing is made up in its place.
 */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-label-sheet.h"
#include "core/stead-limit.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_LABEL_CARTON,
  STEAD_LABEL_JAR,
  STEAD_LABEL_TRAY,
  STEAD_LABEL_SHELF,    /* stands before the goods: name, price, quantity */
} SteadLabelKind;

#define STEAD_N_LABEL_KINDS (STEAD_LABEL_SHELF + 1)

typedef struct
{
  SteadLabelKind    kind;
  SteadLot         *lot;
  char             *name;
  char             *price;         /* (nullable): of a shelf */
  char             *ingredients;   /* (nullable): "Ingredients: …", heaviest first */
  char             *contains;      /* (nullable): "Contains: …", allergens */
  char             *safe;          /* (nullable): safe handling of eggs, in the law's words */
  gsize             safe_bold;     /* bytes of it that are bold */
  char             *keep;          /* (nullable) */
  char             *dates;         /* (nullable) */
  char             *farm;          /* name and place of business */
  char             *net;           /* (nullable): net quantity */
  double            panel_in2;     /* main panel of the pack, square inches */
  double            net_letter_in; /* least height of the letters of the net quantity */
  double            letter_in;     /* of all others */
  const SteadLimit *net_rule;      /* (unowned): where that stands */
  GPtrArray        *missing;       /* of char *, plain sentences: what a complete label lacks; may be empty */
  GPtrArray        *whys;          /* of SteadWhy: net quantity, letters, days, order of the ingredients */
  char             *sentence;      /* markup */
  char             *caution;       /* plain: what local rules may add */
} SteadLabelAnswer;

void stead_label_answer_free (SteadLabelAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLabelAnswer, stead_label_answer_free)

/* Kind as a choice in a list: "Egg carton", "Jar", "Tray or bag", "Shelf". */
const char *stead_label_kind_name (SteadLabelKind kind);

/* The kind that fits what is in a lot: a carton for eggs, a jar for what was canned, else a tray. */
gboolean stead_label_kind_for (SteadStore *store, const SteadLot *lot, SteadLabelKind *out_kind,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Main panels of common packs, square inches (common practice, no source): measure your own. */
double stead_label_panel_usual (SteadLabelKind kind);

/**
 * stead_label_answer_new:
 * @lot_id: what is in the pack
 * @kind: what is labelled
 * @panel_in2: area of the pack's main panel, square inches; 0: as usual for the kind
 *
 * Returns: (transfer full): the words and the sizes, or %NULL with @error
 */
SteadLabelAnswer *stead_label_answer_new (SteadStore      *store,
                                          gint64           lot_id,
                                          SteadLabelKind   kind,
                                          double           panel_in2,
                                          GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_label_sheet_why:
 * @first: how many labels of the first page are gone already, 0 or more
 * @n: how many are to be printed, 0 or more
 *
 * Returns: (transfer full): how many fit on a page, and how many pages that takes
 */
SteadWhy *stead_label_sheet_why (const SteadLabelSheet *sheet,
                                 int                    first,
                                 int                    n) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
