/* Linked once for each folder of src, with all of that folder's library and only what stands above
 * it: that it links is the proof that nothing in it calls sideways or down. */
#include <stdio.h>

int
main (void)
{
  puts ("1..1");
  puts ("ok 1 /layers/" FOLDER "-links-with-what-stands-above-it-alone");
  return 0;
}
