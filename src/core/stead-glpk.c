/* stead-glpk.c - GLPK called so that its own failures do not end the program. */
#include "config.h"

#include "core/stead-glpk-private.h"

#include <setjmp.h>

/* What GLPK says of its troubles is for programmers: the caller gets a GError. */
static int
swallow (void       *data,
         const char *text)
{
  return 1;
}

static void
leave_glpk (void *place)
{
  longjmp (*(jmp_buf *) place, 1);
}

gboolean
stead_glpk_call (glp_prob      **problem,
                 SteadGlpkCall   call,
                 gpointer        data)
{
  jmp_buf place;
  gboolean done;

  if (setjmp (place) != 0)
    {
      glp_error_hook (NULL, NULL);
      glp_free_env ();
      *problem = NULL;
      return FALSE;
    }
  glp_term_hook (swallow, NULL);
  glp_error_hook (leave_glpk, &place);
  done = call (*problem, data);
  glp_error_hook (NULL, NULL);
  return done;
}
