/**
 * Runs before anything is drawn: remembers what is pressed, chosen and typed until all of the page answers
 * (`replayEarlyPresses` takes `earlyPresses` away). A page that is drawn at build time can be pressed before its scripts
 * are there, and a part of it that is fetched later before its own are: nothing else hears what is held here. A box answers
 * to what is typed from `data-ready` on.
 */
export const earlyPressScript = `(function(){var q=window.earlyPresses=[];
function hear(e){if(!window.earlyPresses)return;var t=e.target;if(!t||!t.closest)return;
if(e.type==='keydown'){if(e.key!==' '||t.closest('input,textarea,select,button,a,summary'))return;e.preventDefault();hold(e,{kind:'space',target:document.body});return}
if(e.type==='click'){t=t.closest('button,input[type=radio],input[type=checkbox]');if(t)hold(e,{kind:'click',target:t});return}
if(e.type==='change'&&t.tagName!=='SELECT')return;
if(e.type==='input'&&(t.tagName==='SELECT'||/^(radio|checkbox)$/.test(t.type)))return;
if(e.type==='input')for(var i=q.length;i--;)if(q[i].kind==='input'&&q[i].target===t)q.splice(i,1);
if(e.type==='input'&&document.documentElement.dataset.ready!==undefined)return;
hold(e,{kind:e.type,target:t,value:t.value})}
function hold(e,p){e.stopImmediatePropagation();q.push(p)}
['click','input','change','keydown'].forEach(function(k){addEventListener(k,hear,true)})})()`;
