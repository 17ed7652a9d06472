/* check-fixture.h - a checklist of eggs held hot and a sauce that cools. */
#pragma once

#include "repo-fixture.h"
#include "store/stead-check-repo.h"

G_BEGIN_DECLS

/* Eight in the morning of the day of the tests, UTC. */
#define EIGHT ((gint64) TODAY * 86400 + 8 * 3600)

/* Five lines: hands (a tick), eggs cooked (155 °F for 17 s), eggs held hot (135 °F), the sauce
 * cooled, its refrigerator; one stop, unless @stop is FALSE. */
SteadCheckList *check_list_new (SteadDay day, gint64 batch_id, gboolean stop);

enum { LINE_HANDS, LINE_COOK, LINE_HOT, LINE_COOL, LINE_FRIDGE };

/* Saves it, and reads it back. */
SteadCheckList *check_list_saved (Farm *farm, SteadDay day, gint64 batch_id, gboolean stop);

/* A reading of a line, in °F where it is a temperature; its id. */
gint64 check_read (Farm *farm, gint64 line_id, gint64 at, double value, double held_s);
/* The same, as a struct, not saved: of °F. */
SteadShown check_shown_f (gint64 line_id, gint64 at, double temp_f);

/* Every line read and met; nothing open. */
void check_read_all (Farm *farm, gint64 list_id);

G_END_DECLS
